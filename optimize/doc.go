// Package optimize holds the searches over cars of package solver: it makes the toe
// change small within bounds and limits, and estimates parameters from readings. The
// methods themselves are in package [toewright/optimize/nlp].
//
// [SearchToe] looks for the values of free parameters that bring the toe curve nearest
// to a target, [ToeSearch.Round] for the best of those that a shop can make, [TradeOff]
// for designs between two aims, [SearchRobust] for what serves a share of all cars made,
// and [ToeSearch.Feasible] says which limits are in each other's way. [Shelf] tries
// combinations of parts that can be bought, [ParameterMap] a grid of two parameters,
// [Covers] the set-ups that a car's parts serve, and [Series] counts cars made within
// tolerances.
//
// [FitCar] finds the most likely car behind gauge readings: a [FittedCar], and how well
// it is known. From there [FittedCar.Advise] says which spacers
// to fit, [FittedCar.Predict] what any candidate would do, with its band,
// [FittedCar.NextMeasurements] what would narrow an advice most, and
// [FittedCar.Verify] whether readings after the work agree. [GaugeFit.Slips] looks
// for readings that were written down wrongly.
//
// Everything here is pure computation. The same input, seed included, gives the
// same bytes on one platform.
package optimize
