package optimize

import (
	"context"
	"slices"

	"toewright/optimize/nlp"
)

// Design is one design of a trade-off.
type Design struct {
	Values []float64
	Best   Figures
	Value  float64 // of the search's objective, radians
	Aim    float64 // value of the second aim
}

// TradeOff asks for designs between the least toe change and the least of a
// second aim, such as the distance from the stock part or the Ackermann error.
type TradeOff struct {
	ToeSearch
	Aim    Aim
	Levels int // designs asked for, at least 2
	// Found, if not nil, hears of the undominated designs so far whenever there is one more,
	// in the order of the second aim. The designs are the caller's.
	Found func([]Design)
	// Known are searches of the same trade-off, settings alike, that [TradeOff.PolishEnds] and
	// [TradeOff.PolishLevels] have made.
	Known FrontSearches
}

// Front returns undominated designs in the order of the second aim, from the least
// toe change to the least that the aim comes to within bounds and limits, with the aim
// held below each of some levels between the two. The ends are searched as a search is;
// the levels between by local searches from where those of the level beside ended, all of
// them and not the best alone, and from a few spread starts, other ones at each level.
// What is found at one level is carried to both sides of it until no level becomes
// better, so that no design is worse than one that gives more, and a place found once
// counts everywhere. [Settings.Restarts], where stated, is how many spread starts each
// level has. A cancelled context ends it early with the designs found so far.
func (t *TradeOff) Front(ctx context.Context, s *Settings) ([]Design, error) {
	f, err := newFront(ctx, t, s)
	if err != nil {
		return nil, err
	}
	places, err := f.ends()
	if err != nil || len(f.levels) == 0 {
		return nil, err
	}
	if len(f.levels) > 1 {
		if err := f.least(places); err != nil {
			return nil, err
		}
	}
	if len(f.levels) > 1 {
		f.between()
	}
	f.fraction = 1
	f.tellProgress(0, 0)
	return f.designs(), nil
}

// check returns an error that says what the trade-off lacks.
func (t *TradeOff) check() error {
	if t.Levels < 2 {
		return nlp.ProblemErrorf("a trade-off of %d designs; at least 2 are needed", t.Levels)
	}
	if err := t.Check(); err != nil {
		return err
	}
	return t.Aim.check(&t.ToeSearch)
}

// undominated returns the designs that gain on those before them, which have less of
// the aim, from the last to the first.
func undominated(designs []Design) []Design {
	var out []Design
	for _, d := range designs {
		if len(out) == 0 || d.Value < out[len(out)-1].Value*(1-nlp.Agreement) {
			out = append(out, d)
		}
	}
	slices.Reverse(out)
	return out
}
