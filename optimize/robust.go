package optimize

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// RobustSearch asks for the values of free parameters for which a share of all
// cars made, such as 0.95, has the least toe change: not the nominal car.
type RobustSearch struct {
	ToeSearch
	Tolerances []Tolerance
	// Share of the cars, in all scenarios, that the objective is the percentile
	// of; 0 means 0.95. Of each scenario there are as many cars as its weight says.
	Share float64
	// AsBuilt says that static toe is not set again on each car; see
	// [Judge.LeaveToe].
	AsBuilt bool
	// Nominal is what [SearchToe] answers to the same search; it is searched where nil.
	Nominal *ToeAnswer
}

// RobustAnswer is what a robust search found.
type RobustAnswer struct {
	Values []float64
	// Percentile of the measure over cars built, none of which the search saw: of the
	// answer, of the nominal optimum from which the search began, and of the base
	// car's own values.
	Percentile, Nominal, Start Percentile
	NominalValues              []float64
	Status                     nlp.Status
	Evaluations                int
}

// robustDraws is how many cars by scenario stand for all while the search goes on, more
// of a scenario of more weight: the same for every design, which makes the differences
// between designs surer than their values.
const robustDraws = 2000

// SearchRobust begins at the nominal optimum, or at the base car's own values where these
// serve better, and improves the percentile by the Nelder-Mead method, its simplex
// renewed once. Each car's toe curve is the design's own exact one plus exact
// sensitivities times what it is off by. What comes of it has fitted itself to the cars that it was judged by, so that other cars, built
// one by one, say which design is the answer, the nominal one among them, and how good.
// Where the context ends it is the best by then, judged by fewer cars.
func SearchRobust(ctx context.Context, p *RobustSearch, s *Settings) (*RobustAnswer, error) {
	nominal, err := p.nominal(ctx, s.Within(0, nominalShare))
	if err != nil {
		return nil, err
	}
	if p.Nominal == nil {
		s = s.Within(nominalShare, 1)
	}
	if nominal.Values == nil {
		return &RobustAnswer{Status: nominal.Result.Status}, nil
	}
	r, err := newRobustModel(p, s)
	if err != nil {
		return nil, err
	}
	out := &RobustAnswer{NominalValues: nominal.Values, Status: nominal.Result.Status}
	r.within(0, judgeShare/4)
	out.Start = r.judged(ctx, p.Start(), hastyCars)
	r.within(judgeShare/4, judgeShare)
	out.Nominal = r.judged(ctx, nominal.Values, judgedCars)
	r.within(judgeShare, 1-judgeShare)
	out.Values, out.Percentile = nominal.Values, out.Nominal
	x, least := nominal.Values, r.percentile(nominal.Values)
	if v := r.percentile(p.Start()); v < least {
		x, least = p.Start(), v
	}
	held := !math.IsInf(least, 1)
	for range 2 {
		y, v, status := r.descend(ctx, x)
		if v < least {
			x, least = y, v
		}
		if out.Status = status; status == nlp.Cancelled {
			break
		}
	}
	out.Evaluations = r.evaluations
	if slices.Equal(x, nominal.Values) {
		return out, nil
	}
	r.within(1-judgeShare, 1)
	if found := r.judged(ctx, x, judgedCars); !held || found.less(out.Percentile) {
		out.Values, out.Percentile = x, found
	}
	return out, nil
}

// nominalShare is the part that the nominal search has in the progress of a robust one,
// judgeShare that which each of the two looks at other cars has in the rest.
const nominalShare, judgeShare = 0.2, 0.15

// nominal returns the answer of the nominal search.
func (p *RobustSearch) nominal(ctx context.Context, s *Settings) (*ToeAnswer, error) {
	if p.Nominal != nil {
		return p.Nominal, nil
	}
	return SearchToe(ctx, &p.ToeSearch, s)
}

// robustModel evaluates the percentile of a design.
type robustModel struct {
	p           *RobustSearch
	m           *toeModel
	series      []*Series // of each scenario
	draws       [][]float64
	inScenario  []int // of the draws, from the first on, by scenario
	cars        []float64
	y           []float64
	evaluations int
	least       float64   // percentile of the best so far that is allowed
	at          []float64 // its values
	settings    *Settings
	report      func(fraction float64) // of the part of the work at hand
}

// within makes the progress that of a part of the whole.
func (r *robustModel) within(from, to float64) {
	s := r.settings.Within(from, to)
	r.report = func(float64) {}
	if s != nil && s.Progress != nil {
		r.report = func(fraction float64) {
			s.Progress(Progress{Evaluations: r.evaluations, Best: r.least, X: r.at, Fraction: math.Min(fraction, 1)})
		}
	}
}

func newRobustModel(p *RobustSearch, s *Settings) (*robustModel, error) {
	r := &robustModel{p: p, m: newToeModel(&p.ToeSearch), least: math.Inf(1), settings: s}
	r.within(0, 1)
	seed := uint64(0)
	if s != nil {
		seed = s.Seed
	}
	for i := range r.m.scenarios {
		sc := &r.m.scenarios[i]
		j := Judge{Base: p.Base, Hold: sc.Hold, Travels: p.Travels, Targets: p.Targets, Sides: p.Judge, From: sc.From}
		if p.AsBuilt {
			j.Built = &Built{} // of no car yet
		}
		series := &Series{Judge: j, Tolerances: p.Tolerances, Measure: p.Measure, Seed: seed}
		if err := series.Check(); err != nil {
			return nil, err
		}
		r.series = append(r.series, series)
	}
	errs, most := r.series[0].errors(), 0
	for i := range r.series {
		r.inScenario = append(r.inScenario, r.portion(i, robustDraws*len(r.series)).Len())
		most = max(most, r.inScenario[i])
	}
	rng := rand.New(rand.NewPCG(seed, robustDraws))
	for range most {
		xs := make([]float64, len(errs))
		for k := range errs {
			xs[k] = errs[k].Draw(rng)
		}
		r.draws = append(r.draws, xs)
	}
	return r, nil
}

// percentile is percentileOf, or +Inf where a limit is broken or a bound passed.
func (r *robustModel) percentile(x []float64) float64 {
	if !r.allowed(x) {
		r.evaluations++
		return math.Inf(1)
	}
	v := r.percentileOf(x)
	if v < r.least {
		r.least, r.at = v, slices.Clone(x)
	}
	r.report(float64(r.evaluations) / float64(2*robustTries*len(x)))
	return v
}

// percentileOf returns the percentile of the measure over all draws and scenarios
// at x; +Inf where a car cannot be built.
func (r *robustModel) percentileOf(x []float64) float64 {
	r.evaluations++
	r.cars = r.cars[:0]
	for i, s := range r.series {
		spread, err := r.spread(s, r.m.changes(&r.m.scenarios[i], x))
		if err != nil {
			return math.Inf(1)
		}
		r.y = slices.Grow(r.y[:0], len(spread.Nominal))[:len(spread.Nominal)]
		for _, xs := range r.draws[:r.inScenario[i]] {
			spread.linear(xs, r.y)
			r.cars = append(r.cars, s.Figure(r.y).Radians())
		}
	}
	slices.Sort(r.cars)
	return nlp.Quantile(r.cars, r.p.share())
}

// spread returns the spread of a series of the car with changes.
func (r *robustModel) spread(s *Series, changes []solver.Change) (*Spread, error) {
	if err := r.set(s, changes); err != nil {
		return nil, err
	}
	return s.Propagate()
}

// set makes a series one of the car with changes.
func (r *robustModel) set(s *Series, changes []solver.Change) error {
	s.Changes = append([]solver.Change(nil), changes...)
	if !r.p.AsBuilt {
		return nil
	}
	drawn, err := s.Base.Assemble(s.Changes, s.Hold)
	if err != nil {
		return err
	}
	return s.LeaveToe(drawn)
}

func (p *RobustSearch) share() float64 {
	if p.Share == 0 {
		return 0.95
	}
	return p.Share
}

// allowed reports whether x lies within the bounds and holds the limits.
func (r *robustModel) allowed(x []float64) bool {
	for k := range r.p.Free {
		if f := &r.p.Free[k]; !(x[k] >= f.Min && x[k] <= f.Max) {
			return false
		}
	}
	for _, l := range r.m.limitStates(x) {
		if !l.Held {
			return false
		}
	}
	return true
}

// Round is [ToeSearch.Round] by the percentile in place of the nominal figure. s is
// that of the search whose answer x is, so that the same cars are judged. Where the context
// ends the figures are NaN. Parameters
// without a grid are fitted anew by the nominal figure, and stay where that is no gain.
func (p *RobustSearch) Round(ctx context.Context, x []float64, grids []Grid, s *Settings) (*Rounded, error) {
	if err := p.fits(x, grids); err != nil {
		return nil, err
	}
	r, err := newRobustModel(p, s)
	if err != nil {
		return nil, err
	}
	g, err := newGridSearch(ctx, &p.ToeSearch, r.m, grids, s.Within(0, robustRoundShare))
	if err != nil {
		return nil, err
	}
	g.run(x)
	r.within(robustRoundShare, 1-2*judgeShare)
	w := gridWalk{ctx: ctx, axes: g.axes, diagonals: 4, judge: r.onGrid(g)}
	best, err := w.from(x, g.best)
	if err != nil {
		return nil, err
	}
	r.within(1-2*judgeShare, 1-judgeShare)
	out := &Rounded{Values: best.x, Percentile: solver.Angle(math.NaN()), Cost: solver.Angle(math.NaN()), Held: best.broken == 0}
	out.Best, _ = r.m.figures(best.x)
	if ctx.Err() != nil {
		return out, nil // nobody waits for other cars
	}
	out.Percentile = r.judged(ctx, best.x, judgedCars).Value
	r.within(1-judgeShare, 1)
	out.Cost = out.Percentile - r.judged(ctx, x, judgedCars).Value
	return out, nil
}

// robustRoundShare is the part that the nominal figures have in the progress of rounding a
// robust answer.
const robustRoundShare = 0.3

// onGrid judges grid points by the percentile, the parameters without a grid fitted anew
// where that is a gain.
func (r *robustModel) onGrid(g *gridSearch) func([]float64) gridPoint {
	at := func(x []float64) gridPoint {
		pt := r.m.point(x, &g.o)
		r.report(0) // nobody knows how long a walk is
		if !math.IsInf(pt.broken, 1) {
			pt.value = r.percentileOf(x)
		}
		return pt
	}
	free := g.rest[len(g.order)]
	return func(x []float64) gridPoint {
		pt := at(x)
		if free != nil {
			if anew := at(free.at(x)); anew.less(pt) {
				return anew
			}
		}
		return pt
	}
}

const (
	// robustTries bounds the evaluations of one descent, by variables.
	robustTries = 120
	// robustEdge is the first length of the simplex's edges, in units of each range.
	robustEdge = 0.05
	// robustGain is the share of the percentile that is worth going on for.
	robustGain = 1e-4
)

// descend improves x by the Nelder-Mead method in units of each range.
func (r *robustModel) descend(ctx context.Context, x []float64) ([]float64, float64, nlp.Status) {
	unit := func(u []float64) []float64 {
		out := make([]float64, len(u))
		for k := range u {
			f := &r.p.Free[k]
			// A point beyond a bound is folded back, so that an optimum at a
			// bound can be approached from within.
			out[k] = math.Max(f.Min, math.Min(f.Max, f.Min+u[k]*(f.Max-f.Min)))
		}
		return out
	}
	start := make([]float64, len(x))
	for k := range x {
		f := &r.p.Free[k]
		start[k] = (x[k] - f.Min) / (f.Max - f.Min)
	}
	d := nlp.NelderMead{
		Value: func(u []float64) float64 { return r.percentile(unit(u)) },
		Edge:  robustEdge, Evaluations: robustTries * len(x), Gain: robustGain,
	}
	best, least := d.Run(ctx, start)
	switch {
	case math.IsInf(least, 1):
		return x, least, nlp.Stalled
	case ctx.Err() != nil:
		return unit(best), least, nlp.Cancelled
	}
	return unit(best), least, nlp.Converged
}
