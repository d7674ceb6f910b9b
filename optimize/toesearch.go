package optimize

import (
	"context"
	"math"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// ToeSearch asks for the values of free parameters, within their bounds, that
// bring the toe curve nearest to a target over the whole window.
type ToeSearch struct {
	Base *solver.Assembler
	Free []Free
	// Travels are the positions judged, mm, ascending, 0 among them; weights of
	// the same number may say how much each counts, nil meaning alike.
	Travels []float64
	Weights []float64
	// Targets are those of each side; flat by default.
	Targets [2]Target
	// Measure is RMS or Peak.
	Measure Measure
	// Judge selects the wheels judged: of both, the worse is the car's.
	Judge solver.Selection
	// Scenarios are the set-ups that the answer must serve; none means the base
	// car as it stands. Across says how they become one number.
	Scenarios []Scenario
	Across    Across
	// Limits are those that every scenario's car must hold.
	Limits []Limit
	// Also are values from which searches begin beside those of the base car.
	Also [][]float64
	// Tried are grid points that [ToeSearch.TryGrids] has tried for [ToeSearch.Round].
	Tried []GridTried
}

// ToeAnswer is what a toe search found.
type ToeAnswer struct {
	Values []float64 // of the free parameters, mm or radians
	// Best and Start are the figures of the answer and of the base car; Start is
	// NaN where the base car does not reach the window. Over several scenarios
	// they are the root mean square of theirs, and the largest.
	Best, Start Figures
	// Scenarios are the figures of each scenario in the answer.
	Scenarios []Figures
	// Limits says how the answer's cars stand to the limits. Where none holds
	// them all the answer is the one that breaks them least, and those that are
	// broken are in each other's way.
	Limits []LimitState
	// Result is the search behind it; its objective is in radians.
	Result nlp.Result
	Cars   int // assembled by the search itself, beside what other processors did for it
}

// Check returns an error that says what the search lacks.
func (p *ToeSearch) Check() error {
	if len(p.Free) == 0 {
		return nlp.ProblemErrorf("no parameter is free: name at least one")
	}
	err := solver.CheckOnce(len(p.Free), func(i int) (*solver.Parameter, solver.Selection) {
		return &p.Free[i].Parameter, p.Free[i].Sides
	})
	if err != nil {
		return err
	}
	if indexOfZero(p.Travels) < 0 {
		return nlp.ProblemErrorf("the window does not contain travel 0")
	}
	for i := range p.Targets {
		if err := p.Targets[i].Check(); err != nil {
			return err
		}
	}
	for i := range p.Limits {
		if err := p.Limits[i].check(); err != nil {
			return err
		}
	}
	for i := range p.Scenarios {
		if err := p.Scenarios[i].conflict(p.Free); err != nil {
			return err
		}
	}
	return nil
}

// scenarios returns those of the search, or the base car alone.
func (p *ToeSearch) scenarios() []Scenario {
	if len(p.Scenarios) > 0 {
		return p.Scenarios
	}
	return []Scenario{{Hold: solver.HoldAll}}
}

// wheels returns those that are moved: one stands for both where they do the same.
func (p *ToeSearch) wheels() []solver.Side {
	one := p.Judge == solver.BothSides
	for i := range p.Free {
		one = one && p.Free[i].Sides == solver.BothSides
	}
	for _, s := range p.scenarios() {
		one = one && s.Motion == solver.BothWheels && changedAlike(s.Changes) && alike(p.Base, &p.Targets, s.From)
	}
	if one {
		return solver.Sides[:1]
	}
	return wheelsOf(p.Judge)
}

// Objective returns how the residuals of wheels, those of one scenario after the
// other, become the one number that the search minimises.
func (p *ToeSearch) Objective(wheels int) nlp.Objective {
	o := nlp.Objective{Measure: p.Measure, Across: p.Across}
	for _, s := range p.scenarios() {
		o.Groups = append(o.Groups, nlp.Group{Residuals: wheels * len(p.Travels), Weight: s.weight(), Wheels: wheels})
		for range wheels {
			o.Weights = append(o.Weights, p.Weights...)
		}
	}
	return o
}

// variables returns the free parameters with their bounds.
func (p *ToeSearch) variables() []nlp.Variable {
	var vs []nlp.Variable
	for i := range p.Free {
		f := &p.Free[i]
		vs = append(vs, nlp.Variable{Name: f.Key(), Min: f.Min, Max: f.Max})
	}
	return vs
}

// SearchToe looks for the best values of the free parameters. Only an input that
// no search can start from is an error; how the search ended stands in the
// answer's status, and a search that found no car able to reach the window has no
// values.
func SearchToe(ctx context.Context, p *ToeSearch, s *Settings) (*ToeAnswer, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	m := newToeModel(p)
	s, end := p.searchBeside(ctx, s)
	r, err := nlp.Run(ctx, p.problem(m), s)
	end()
	if err != nil {
		return nil, err
	}
	a := &ToeAnswer{Result: r, Cars: m.cars, Start: m.baseFigures()}
	if r.X == nil {
		return a, nil
	}
	a.Values = r.X
	a.Best, a.Scenarios = m.figures(r.X)
	a.Limits = m.limitStates(r.X)
	return a, nil
}

// PolishToe makes those local searches of [SearchToe] that are part i of n of them, for
// [nlp.Settings.Known].
func PolishToe(ctx context.Context, p *ToeSearch, s *Settings, i, n int) ([]nlp.Polished, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	return nlp.Polish(ctx, p.problem(newToeModel(p)), s, i, n)
}

// problem returns the search as [Run] takes it.
func (p *ToeSearch) problem(m nlp.Model) nlp.Problem {
	return nlp.Problem{Model: m, Variables: p.variables(), Objective: p.Objective(len(p.wheels())), Start: p.Start(), Also: p.Also}
}

// Problem returns the search as [Run] takes it, for whoever would solve it otherwise.
// The search must pass [ToeSearch.Check].
func (p *ToeSearch) Problem() nlp.Problem { return p.problem(newToeModel(p)) }

// Score returns the figure that the search minimises at values of its parameters,
// radians, whatever the limits; NaN where a car does not reach the window.
func (p *ToeSearch) Score(x []float64) float64 {
	m := newToeModel(p)
	v := nlp.Values{R: make([]float64, m.Size().Residuals)}
	if !m.residuals(x, &v) {
		return math.NaN()
	}
	o := p.Objective(len(m.wheels))
	return o.Value(v.R)
}

// Figures returns what the search judges at given values: the figures of all
// scenarios together and of each, and how the cars stand to the limits.
func (p *ToeSearch) Figures(x []float64) (all Figures, each []Figures, limits []LimitState) {
	m := newToeModel(p)
	all, each = m.figures(x)
	return all, each, m.limitStates(x)
}

// Start returns the base car's own values.
func (p *ToeSearch) Start() []float64 {
	x := make([]float64, len(p.Free))
	for i := range p.Free {
		x[i] = p.Free[i].now(p.Base)
	}
	return x
}

// now returns the value at which a parameter stands in the base car.
func (f *Free) now(a *solver.Assembler) float64 {
	if !f.Parameter.Absolute {
		return 0
	}
	side := solver.Left
	if f.Sides == solver.RightOnly {
		side = solver.Right
	}
	return a.Setting(f.Parameter, side)
}

// figures returns the figures of all scenarios together and of each.
func (m *toeModel) figures(x []float64) (Figures, []Figures) {
	n := m.Size().Residuals
	v := nlp.Values{R: make([]float64, n), G: make([]float64, m.Size().Limits)}
	if !m.Evaluate(x, &v) {
		return nowhere, nil
	}
	each := make([]Figures, len(m.scenarios))
	per := n / len(each)
	for i := range each {
		each[i] = CarFigures(v.R[i*per:(i+1)*per], len(m.wheels))
	}
	return together(each), each
}

// together returns the root mean square of the scenarios' figures, and the largest.
func together(each []Figures) (all Figures) {
	sum := 0.0
	for _, f := range each {
		sum += f.RMS.Radians() * f.RMS.Radians()
		all.Peak = max(all.Peak, f.Peak)
	}
	all.RMS = solver.Angle(math.Sqrt(sum / float64(len(each))))
	return all
}
