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
}

// Front returns undominated designs in the order of the second aim, from the least
// toe change to the least that the aim comes to within bounds and limits: the
// search repeated with the aim held below each of some levels between the two. Each
// level is searched from the spread starts and from the design of the next tighter
// one, which holds it too, so that no design is worse than one that gives more. A
// cancelled context ends it early with the designs found so far.
func (t *TradeOff) Front(ctx context.Context, s *Settings) ([]Design, error) {
	if t.Levels < 2 {
		return nil, nlp.ProblemErrorf("a trade-off of %d designs; at least 2 are needed", t.Levels)
	}
	if err := t.Check(); err != nil {
		return nil, err
	}
	if err := t.Aim.check(&t.ToeSearch); err != nil {
		return nil, err
	}
	f := newFront(ctx, t, s)
	first, err := f.first()
	if err != nil || first == nil {
		return nil, err
	}
	t.found(*first)
	least, err := f.least(first)
	if err != nil {
		return nil, err
	}
	if !(least.Aim < first.Aim) {
		return []Design{*first}, nil
	}
	designs := []Design{*least}
	t.found(*least, *first)
	for k := t.Levels - 2; k > 0 && ctx.Err() == nil; k-- {
		level := first.Aim + (least.Aim-first.Aim)*float64(k)/float64(t.Levels-1)
		d, err := f.held(level, &designs[len(designs)-1], first)
		if err != nil {
			return nil, err
		}
		designs = append(designs, *d)
		t.found(append(slices.Clone(designs), *first)...)
	}
	return undominated(append(designs, *first)), nil
}

// found tells of the designs so far.
func (t *TradeOff) found(designs ...Design) {
	if t.Found != nil {
		t.Found(undominated(designs))
	}
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

// front is the state of one trade-off.
type front struct {
	*TradeOff
	ctx      context.Context
	settings *Settings
	toe      *toeModel
	aim      *aimModel
	done     int // searches
}

func newFront(ctx context.Context, t *TradeOff, s *Settings) *front {
	m := newToeModel(&t.ToeSearch)
	return &front{TradeOff: t, ctx: ctx, settings: s, toe: m, aim: newAimModel(t, m)}
}

// fewerStarts is by how much fewer spread starts a search has that begins from the
// designs beside it too.
const fewerStarts = 3

// run makes the next search, from the spread starts and from others.
func (f *front) run(m nlp.Model, o nlp.Objective, also ...[]float64) (nlp.Result, error) {
	n := float64(f.Levels + 1)
	s := f.settings.Within(float64(f.done)/n, float64(f.done+1)/n)
	f.done++
	if len(also) > 0 {
		few := s.WithDefaults(len(f.Free))
		few.Restarts = max(few.Restarts/fewerStarts, 1)
		s = &few
	}
	p := f.problem(m)
	p.Objective, p.Also = o, also
	return nlp.Run(f.ctx, p, s)
}

// objective returns what is minimised beside the aim.
func (f *front) objective() nlp.Objective { return f.Objective(len(f.toe.wheels)) }

// first returns the design of the least toe change; nil where none holds the limits.
func (f *front) first() (*Design, error) {
	r, err := f.run(f.toe, f.objective())
	if err != nil || r.X == nil || r.Violation > nlp.LimitSlack {
		return nil, err
	}
	return f.design(r.X, r.Value), nil
}

// design returns that of values with a value of the objective.
func (f *front) design(x []float64, value float64) *Design {
	d := &Design{Values: x, Value: value, Aim: f.aim.at(x)}
	d.Best, _ = f.toe.figures(x)
	return d
}

// least returns the design of the least toe change among those of the least aim.
func (f *front) least(first *Design) (*Design, error) {
	r, err := f.run(f.aim, f.aim.objective(), first.Values)
	if err != nil || r.X == nil || r.Violation > nlp.LimitSlack {
		return first, err
	}
	o := f.objective()
	nearest := f.design(r.X, f.toe.point(r.X, &o).value)
	if !(nearest.Aim < first.Aim) {
		return first, nil
	}
	return f.held(nearest.Aim, nearest, first)
}

// held returns the best design with the aim at most at a level. Tight is one that
// holds it; loose need not.
func (f *front) held(level float64, tight, loose *Design) (*Design, error) {
	if fixed := f.fixedBy(level); fixed != nil {
		f.done++
		return f.rest(fixed, tight)
	}
	m := newHeldModel(f.toe, f.aim, level/f.Aim.Scale+nlp.LimitSlack/2)
	r, err := f.run(m, f.objective(), tight.Values, loose.Values)
	if err != nil {
		return nil, err
	}
	if r.X == nil || r.Violation > nlp.LimitSlack || !(r.Value < tight.Value) {
		return tight, nil
	}
	return f.design(r.X, r.Value), nil
}

// fixedBy returns the parameters that a level leaves no room: the parts of a distance
// that is to be none.
func (f *front) fixedBy(level float64) []int {
	if f.Aim.Of == nil && level <= nlp.LimitSlack*f.Aim.Scale {
		return f.aim.parts
	}
	return nil
}

// rest returns the best design with the parameters that are fixed as a design has
// them.
func (f *front) rest(fixed []int, at *Design) (*Design, error) {
	var of []int
	for i := range f.Free {
		if !slices.Contains(fixed, i) {
			of = append(of, i)
		}
	}
	free, err := newRefit(f.ctx, &f.ToeSearch, f.toe, of)
	if err != nil || free == nil {
		return at, err
	}
	o := f.objective()
	pt := f.toe.point(free.at(at.Values), &o)
	if pt.broken > 0 || !(pt.value < at.Value) {
		return at, nil
	}
	return f.design(pt.x, pt.value), nil
}
