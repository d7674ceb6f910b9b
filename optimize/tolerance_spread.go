package optimize

import (
	"cmp"
	"math"
	"slices"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// Spread is the linear propagation of a series' tolerances (JCGM 100) from exact
// sensitivities.
type Spread struct {
	Errors []Tolerance // independent quantities
	// Nominal is the toe change less target of each side judged and each travel,
	// SD its standard deviation, radians; sides one after the other.
	Nominal, SD []float64
	Peak        int // where the nominal change is largest in magnitude
	// Shares are the parts of the variance at the place where SD is largest,
	// Widest, of each of the series' tolerances; their sum is 1.
	Shares []float64
	Widest int
	// Car is the car as drawn, and By its derivatives by Errors.
	Car *solver.Axle
	By  *solver.Tangents

	rates [][]float64 // by position and quantity, rad by mm or rad
}

// Propagate returns the linear propagation of the series' tolerances.
func (s *Series) Propagate() (*Spread, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	p := &Spread{Errors: s.errors(), Shares: make([]float64, len(s.Tolerances))}
	var car solver.Axle
	if err := s.assemble(&car, solver.BothSides, s.Changes); err != nil {
		return nil, err
	}
	seeds := make([]solver.Change, len(p.Errors))
	for i, e := range p.Errors {
		seeds[i] = solver.Change{Parameter: e.Parameter, Sides: e.Sides}
	}
	tangents, err := car.Tangents(seeds)
	if err != nil {
		return nil, err
	}
	p.Car, p.By = &car, tangents
	var curves [2]solver.Curve
	in := solver.SweepInput{Travels: s.Travels, From: s.From, By: tangents}
	if err := car.Sweep(solver.NewWorkspace(), &in, &curves); err != nil {
		return nil, err
	}
	for _, side := range wheelsOf(s.Sides) {
		if !curves[side].Reach.Whole() {
			return nil, nlp.ProblemErrorf("the %s side does not reach the window: %s ends it", side, curves[side].Reach.Link())
		}
		p.add(s, &curves[side], side)
	}
	p.rank()
	return p, nil
}

// add appends one side's curve.
func (p *Spread) add(s *Series, c *solver.Curve, side solver.Side) {
	zero := indexOfZero(s.Travels)
	home := s.home(c, zero, side)
	for i, q := range c.Positions {
		row := make([]float64, len(p.Errors))
		variance := 0.0
		for k, e := range p.Errors {
			if row[k] = c.ToeRate(i, k); s.Built == nil {
				row[k] -= c.ToeRate(zero, k)
			}
			u := row[k] * e.SD()
			variance += u * u
		}
		p.rates = append(p.rates, row)
		p.SD = append(p.SD, math.Sqrt(variance))
		p.Nominal = append(p.Nominal, float64(q.Toe-home-s.Targets[side].At(q.Travel)))
	}
}

// rank finds the places of the largest change and spread and who contributes.
func (p *Spread) rank() {
	for i := range p.SD {
		if p.SD[i] > p.SD[p.Widest] {
			p.Widest = i
		}
		if math.Abs(p.Nominal[i]) > math.Abs(p.Nominal[p.Peak]) {
			p.Peak = i
		}
	}
	variance := p.SD[p.Widest] * p.SD[p.Widest]
	if variance == 0 {
		return
	}
	for k, e := range p.Errors {
		u := p.rates[p.Widest][k] * e.SD()
		p.Shares[e.stated] += u * u / variance
	}
}

// Ranking returns the indices of the series' tolerances by their share, largest first.
func (p *Spread) Ranking() []int {
	order := make([]int, len(p.Shares))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(p.Shares[b], p.Shares[a]) })
	return order
}
