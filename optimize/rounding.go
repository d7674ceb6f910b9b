package optimize

import (
	"math"

	"toewright/solver"
)

// Rounded is an answer on the grid that the shop can hold.
type Rounded struct {
	Values []float64
	Best   Figures
	// Cost is by how much the measure rises against the answer that was rounded.
	Cost solver.Angle
	Held bool // whether all limits hold
}

// maxRoundingSteps bounds the walk on the grid.
const maxRoundingSteps = 200

// Round returns the best point on the grid near x that holds the limits: from
// the nearest grid point it walks to the best neighbour, diagonals included for
// up to six parameters, until none is better. A step of 0 leaves a parameter as
// it is. It returns an error where steps do not fit the parameters or no grid
// point near x can be built.
func (p *ToeSearch) Round(x, steps []float64) (*Rounded, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	if len(x) != len(p.Free) || len(steps) != len(p.Free) {
		return nil, problemErrorf("%d values and %d steps for %d free parameters", len(x), len(steps), len(p.Free))
	}
	g := &gridWalk{p: p, m: newToeModel(p), steps: steps, o: p.objective()}
	g.best = g.judge(g.nearest(x))
	for range maxRoundingSteps {
		if !g.improve() {
			break
		}
	}
	if math.IsInf(g.best.value, 1) {
		return nil, problemErrorf("no grid point near the answer can be built; use a finer grid")
	}
	out := &Rounded{Values: g.best.x, Held: g.best.broken == 0}
	out.Best, _ = g.m.figures(g.best.x)
	exact, _ := g.m.figures(x)
	out.Cost = out.Best.Of(p.Measure) - exact.Of(p.Measure)
	return out, nil
}

// gridWalk walks on a grid of values.
type gridWalk struct {
	p     *ToeSearch
	m     *toeModel
	o     Objective
	steps []float64
	best  gridPoint
}

// gridPoint is a point judged: limits broken first, then the objective.
type gridPoint struct {
	x             []float64
	broken, value float64
}

func (a gridPoint) less(b gridPoint) bool {
	if a.broken != b.broken {
		return a.broken < b.broken
	}
	return a.value < b.value
}

// nearest returns the grid point within the bounds next to x.
func (g *gridWalk) nearest(x []float64) []float64 {
	out := make([]float64, len(x))
	for i, h := range g.steps {
		out[i] = g.bound(i, x[i])
		if h > 0 {
			out[i] = g.bound(i, math.Round(x[i]/h)*h)
		}
	}
	return out
}

// bound moves a value of parameter i to the last grid point within its bounds.
func (g *gridWalk) bound(i int, v float64) float64 {
	f, h := &g.p.Free[i], g.steps[i]
	if h > 0 {
		return math.Max(math.Ceil(f.Min/h-gridSlack)*h, math.Min(math.Floor(f.Max/h+gridSlack)*h, v))
	}
	return math.Max(f.Min, math.Min(f.Max, v))
}

// gridSlack is the share of a step by which a bound may miss a grid point.
const gridSlack = 1e-9

func (g *gridWalk) judge(x []float64) gridPoint {
	size := g.m.Size()
	v := Values{R: make([]float64, size.Residuals), G: make([]float64, size.Limits)}
	pt := gridPoint{x: x, value: math.Inf(1), broken: math.Inf(1)}
	if !g.m.Evaluate(x, &v) {
		return pt
	}
	pt.value, pt.broken = g.o.Value(v.R), 0
	for _, l := range v.G {
		pt.broken = math.Max(pt.broken, l)
	}
	if pt.broken <= limitSlack {
		pt.broken = 0
	}
	return pt
}

// diagonals is the most parameters whose steps are taken together: 3⁶ points.
const diagonals = 6

// improve moves to the best neighbour; false where none is better.
func (g *gridWalk) improve() bool {
	here, moved := g.best, false
	visit := func(x []float64) {
		if pt := g.judge(x); pt.less(g.best) {
			g.best, moved = pt, true
		}
	}
	if len(g.steps) <= diagonals {
		g.neighbours(here.x, 0, visit)
		return moved
	}
	for i := range g.steps {
		for _, sign := range [2]float64{-1, 1} {
			visit(g.stepped(here.x, i, sign))
		}
	}
	return moved
}

// neighbours visits all points a step or none away in each parameter from i on.
func (g *gridWalk) neighbours(x []float64, i int, visit func([]float64)) {
	if i == len(x) {
		visit(x)
		return
	}
	g.neighbours(x, i+1, visit)
	if g.steps[i] > 0 {
		for _, sign := range [2]float64{-1, 1} {
			g.neighbours(g.stepped(x, i, sign), i+1, visit)
		}
	}
}

// stepped returns x with parameter i a step further.
func (g *gridWalk) stepped(x []float64, i int, sign float64) []float64 {
	out := append([]float64(nil), x...)
	k := math.Round(x[i]/g.steps[i]) + sign
	out[i] = g.bound(i, k*g.steps[i])
	return out
}
