// Package shards has the long calls in shards: what one shard of a run finds, as JSON, and
// the answer from what all of them found, which is that of the undivided call to the byte.
// What is added up are counts, and choices in an order of their own. Package batch has
// shards done by processes that do not know of one another, the page by its workers.
//
// The result of a shard of [Tolerance] has the whole numbers cars, failed and passed; figure,
// the counts of the figure that is held against the limit; and curve, a list of the
// counts of the toe change at each place, left side first, from full droop up.
// Counts are lists of pairs: how many bins beyond the one before, the first from
// bin 0, and how many cars. What a bin is says [optimize.Tally]. Where the study has set-ups
// inSetUps lists the same of the first cars of the series in each, null where no car can be
// built.
//
// The result of [Choose] has tried and built, and best and front, lists of
// combinations by number, each with price, rms and peak in radians, and effects.
// That of [Map] has cells, a list of the figures of its rows in radians, null where
// there is none.
//
// That of [Search] has polished, the local searches that were made: see [nlp.Polished]; and
// tried, the grid points that were tried for the answer's rounding: see [optimize.GridTried].
// That of [TradeOff] is of two rounds: toe and aim, the local searches of the front's ends, then
// levels, those of the levels between: see [optimize.FrontSearches].
package shards
