package optimize

import (
	"cmp"
	"context"
	"math"
	"slices"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// Rounded is an answer on the grid that the shop can hold.
type Rounded struct {
	Values []float64
	Best   Figures
	// Cost is by how much the measure rises against the answer that was rounded:
	// of a robust search, its percentile.
	Cost solver.Angle
	// Percentile is that of a robust search on the grid, else 0.
	Percentile solver.Angle
	Held       bool // whether all limits hold
	// Proved says that every point of the grids within the bounds was tried.
	Proved bool
}

// maxRoundingSteps bounds the walk on the grid.
const maxRoundingSteps = 200

// Round returns the best point found on the grids, one for each parameter, that holds
// the limits: see gridSearch. x is the answer without the grids. Parameters without a
// grid are fitted anew at each point. It returns an error where the grids do not fit
// the parameters or no grid point near x can be built. A context that ends leaves the best
// point found by then, of which nothing is proved. Of the settings, which may be nil, it
// takes the progress function.
func (p *ToeSearch) Round(ctx context.Context, x []float64, grids []Grid, s *Settings) (*Rounded, error) {
	if err := p.fits(x, grids); err != nil {
		return nil, err
	}
	m := newToeModel(p)
	g, err := newGridSearch(ctx, p, m, grids, s)
	if err != nil {
		return nil, err
	}
	g.run(x)
	best, err := g.end(x)
	if err != nil {
		return nil, err
	}
	out := &Rounded{Values: best.x, Held: best.broken == 0, Proved: g.whole && best.broken == 0}
	out.Best, _ = m.figures(best.x)
	out.Cost = solver.Angle(best.value - m.point(x, &g.o).value)
	return out, nil
}

// end returns the best point, improved by a walk among its neighbours.
func (g *gridSearch) end(x []float64) (gridPoint, error) {
	if g.whole && len(g.best) > 0 {
		return g.best[0], nil
	}
	free := g.rest[len(g.order)]
	w := gridWalk{ctx: g.ctx, axes: g.axes, diagonals: 6, judge: func(x []float64) gridPoint { return g.m.point(free.at(x), &g.o) }}
	return w.from(x, g.best)
}

// point returns x with the objective and the worst limit that it breaks; both infinite
// where a car cannot be built or does not reach the window.
func (m *toeModel) point(x []float64, o *nlp.Objective) gridPoint {
	size := m.Size()
	v := &nlp.Values{R: make([]float64, size.Residuals), G: make([]float64, size.Limits)}
	pt := gridPoint{x: x, value: math.Inf(1), broken: math.Inf(1)}
	if !m.Evaluate(x, v) {
		return pt
	}
	pt.value, pt.broken = o.Value(v.R), 0
	for _, l := range v.G {
		if !(l <= nlp.LimitSlack) {
			pt.broken = math.Max(pt.broken, l)
		}
	}
	return pt
}

// holds reports whether the car at x holds all limits.
func (m *toeModel) holds(x []float64) bool {
	g, ok := m.limitsAt(nil, x)
	if !ok {
		return false
	}
	for _, l := range g {
		if !(l <= nlp.LimitSlack) {
			return false
		}
	}
	return true
}

// gridWalk walks on a grid of values.
type gridWalk struct {
	ctx       context.Context
	axes      []gridAxis
	judge     func(x []float64) gridPoint
	diagonals int // the most parameters whose steps are taken together: 3ⁿ points
	best      gridPoint
}

// gridPoint is a point judged: limits broken first, then the objective.
type gridPoint struct {
	x             []float64
	broken, value float64
}

func (a gridPoint) less(b gridPoint) bool {
	return cmp.Or(cmp.Compare(nlp.Breach(a.broken), nlp.Breach(b.broken)), cmp.Compare(a.value, b.value)) < 0
}

// fits returns an error where there is not one value and one grid for each parameter.
func (p *ToeSearch) fits(x []float64, grids []Grid) error {
	if err := p.Check(); err != nil {
		return err
	}
	if len(x) != len(p.Free) || len(grids) != len(p.Free) {
		return nlp.ProblemErrorf("%d values and %d grids for %d free parameters", len(x), len(grids), len(p.Free))
	}
	return nil
}

// from returns the end of the walk from the best of some points, and from the grid
// point next to x.
func (g *gridWalk) from(x []float64, points []gridPoint) (gridPoint, error) {
	start := slices.Clone(x)
	for i := range g.axes {
		start[i] = g.axes[i].nearest(x[i])
	}
	g.best = g.judge(start)
	for i, pt := range points {
		if i > 0 && g.ctx.Err() != nil {
			break
		}
		if pt = g.judge(pt.x); pt.less(g.best) {
			g.best = pt
		}
	}
	for range maxRoundingSteps {
		if g.ctx.Err() != nil || !g.improve() {
			break
		}
	}
	if math.IsInf(g.best.value, 1) {
		return gridPoint{}, nlp.ProblemErrorf("no grid point near the answer can be built; use a finer grid")
	}
	return g.best, nil
}

// improve moves to the best neighbour; false where none is better.
func (g *gridWalk) improve() bool {
	here, moved := g.best, false
	visit := func(x []float64) {
		if g.ctx.Err() != nil {
			return
		}
		if pt := g.judge(x); pt.less(g.best) {
			g.best, moved = pt, true
		}
	}
	if len(g.axes) <= g.diagonals {
		g.neighbours(here.x, 0, visit)
		return moved
	}
	for i := range g.axes {
		for _, x := range g.stepped(here.x, i) {
			visit(x)
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
	for _, y := range g.stepped(x, i) {
		g.neighbours(y, i+1, visit)
	}
}

// stepped returns x with parameter i a step lower and a step higher, as far as
// there are such.
func (g *gridWalk) stepped(x []float64, i int) [][]float64 {
	var out [][]float64
	for _, way := range [2]int{-1, 1} {
		if v := g.axes[i].next(x[i], way); v != x[i] {
			y := append([]float64(nil), x...)
			y[i] = v
			out = append(out, y)
		}
	}
	return out
}
