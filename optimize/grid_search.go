package optimize

import (
	"context"
	"math"
	"slices"

	"toewright/optimize/nlp"
)

const (
	// enumerated is how many grid points at most are all tried.
	enumerated = 10_000
	// coarseEnumerated is the same of the coarser grids that a grid contains, which
	// are tried first.
	coarseEnumerated = 2_000
	// limitChecks bounds the cars held against the limits before one holds them.
	limitChecks = 1_000
	// gridEvaluations bounds those of the branches.
	gridEvaluations = 20_000
	// firstPatience and patience are how many values in a row a way goes on through
	// that lead to nothing better: of the first parameter, and of the others. Along a
	// valley the best figure goes up and down a little.
	firstPatience, patience = 250, 4
	// coarseShare is that of the coarser grids in the progress.
	coarseShare = 0.2
	// keptPoints is how many of the best points are kept.
	keptPoints = 64
)

// coarser are the multiples of the steps whose grids are tried first: one that a
// grid contains is then never better than the grid itself.
var coarser = [...]float64{20, 10, 8, 5, 4, 3, 2}

// gridSearch looks for the best points of a grid by the nominal figure. Small grids
// are tried point by point; larger ones by branches: one parameter after the other
// is set to a grid value, the nearest first, the others are fitted anew, and a
// branch ends where even they cannot bring the figure below the best point's. Along
// the valley in which one height makes up for another that goes as far as the valley
// is good enough.
type gridSearch struct {
	ctx    context.Context
	report func(fraction float64)
	p      *ToeSearch
	m      *toeModel
	o      nlp.Objective
	axes   []gridAxis
	order  []int    // parameters with a grid, those of the fewest values first
	rest   []*refit // by the number of parameters set: fits the others; nil where there are none
	best   []gridPoint
	spent  int  // evaluations by branches
	first  int  // values tried of the first parameter
	whole  bool // every grid point was tried
}

func newGridSearch(ctx context.Context, p *ToeSearch, m *toeModel, grids []Grid, s *Settings) (*gridSearch, error) {
	g := &gridSearch{ctx: ctx, report: func(float64) {}, p: p, m: m, o: p.Objective(len(m.wheels))}
	if s != nil && s.Progress != nil {
		g.report = func(done float64) {
			p := Progress{Evaluations: m.cars, Best: g.bar(), Fraction: done}
			if len(g.best) > 0 {
				p.X = g.best[0].x
			}
			s.Progress(p)
		}
	}
	for i := range grids {
		axis, err := newGridAxis(&p.Free[i], &grids[i])
		if err != nil {
			return nil, err
		}
		g.axes = append(g.axes, axis)
		if axis.gridded() {
			g.order = append(g.order, i)
		}
	}
	slices.SortStableFunc(g.order, func(a, b int) int { return g.axes[a].count() - g.axes[b].count() })
	if len(g.order) == 0 { // x stays as it is
		g.rest = []*refit{nil}
		return g, nil
	}
	for d := range len(g.order) + 1 {
		free, err := newRefit(ctx, p, m, g.unset(d))
		if err != nil {
			return nil, err
		}
		g.rest = append(g.rest, free)
	}
	return g, nil
}

// unset lists the parameters that are free when d are set.
func (g *gridSearch) unset(d int) (of []int) {
	for i := range g.axes {
		if !slices.Contains(g.order[:d], i) {
			of = append(of, i)
		}
	}
	return of
}

// run searches from an answer x.
func (g *gridSearch) run(x []float64) {
	if g.enumerate(0, 0, 1) {
		g.whole = g.ctx.Err() == nil
		return
	}
	for stage := 1; stage <= len(coarser); stage++ {
		of := coarseShare / float64(len(coarser))
		g.enumerate(stage, of*float64(stage-1), of*float64(stage))
	}
	g.branch(0, x)
}

// bar is the figure that a point has to better.
func (g *gridSearch) bar() float64 {
	if len(g.best) == 0 {
		return math.Inf(1)
	}
	return g.best[0].value
}

// offer takes a point that holds the limits among the best.
func (g *gridSearch) offer(pt gridPoint) {
	k, _ := slices.BinarySearchFunc(g.best, pt.value, func(q gridPoint, v float64) int {
		if q.value <= v {
			return -1
		}
		return 1
	})
	if k >= keptPoints || slices.ContainsFunc(g.best, func(q gridPoint) bool { return slices.Equal(q.x, pt.x) }) {
		return
	}
	g.best = slices.Insert(g.best, k, pt)
	g.best = g.best[:min(len(g.best), keptPoints)]
}

// way is a walk along one parameter's grid, away from where the others would have it.
type way struct {
	sign   int
	at     float64
	from   []float64 // the point before
	broken float64   // by how much limits were broken there
	idle   int       // values that led to nothing
	over   bool
}

// branch sets one parameter more to its grid values in turn, beginning next to x.
func (g *gridSearch) branch(d int, x []float64) {
	if d == len(g.order) {
		return
	}
	k := g.order[d]
	near := g.axes[k].nearest(x[k])
	ways := [2]way{{sign: 1, at: near, from: x, broken: math.Inf(1)}, {sign: -1, at: g.axes[k].next(near, -1), from: x, broken: math.Inf(1)}}
	ways[1].over = ways[1].at == near
	for !ways[0].over || !ways[1].over {
		for i := range ways {
			if w := &ways[i]; !w.over {
				g.step(d, w)
			}
		}
	}
}

// step sets the parameter to the next value of a way, and goes on to the other
// parameters where that may lead to a better point.
func (g *gridSearch) step(d int, w *way) {
	k := g.order[d]
	if d == 0 {
		g.first++
	}
	done := math.Max(float64(g.first)/float64(g.axes[g.order[0]].count()), float64(g.spent)/gridEvaluations)
	g.report(coarseShare + (1-coarseShare)*math.Min(done, 1))
	x := slices.Clone(w.from)
	x[k] = w.at
	pt := g.fitted(d+1, x)
	next := g.axes[k].next(w.at, w.sign)
	w.over = next == w.at || g.spent > gridEvaluations || math.IsInf(pt.broken, 1) || g.ctx.Err() != nil
	switch {
	case pt.broken > 0:
		w.over = w.over || !(pt.broken < w.broken)
	case !(pt.value < g.bar()):
		w.idle++
		w.over = w.over || w.idle > patienceAt(d)
	case d+1 == len(g.order):
		g.offer(pt)
	default:
		g.branch(d+1, pt.x)
	}
	w.at, w.from, w.broken = next, pt.x, pt.broken
}

// patienceAt returns that of the parameter set after d others.
func patienceAt(d int) int {
	if d == 0 {
		return firstPatience
	}
	return patience
}

// fitted returns x with the parameters that are not among the first d to be set at
// their best.
func (g *gridSearch) fitted(d int, x []float64) gridPoint {
	r := g.rest[d]
	if r == nil {
		g.spent++
		return g.m.point(x, &g.o)
	}
	y, l, ok := r.run(x)
	g.spent += r.spent
	if !ok {
		return g.m.point(x, &g.o)
	}
	pt := gridPoint{x: y, value: l.Value}
	if l.Violation > nlp.LimitSlack {
		pt.broken = l.Violation
	}
	return pt
}
