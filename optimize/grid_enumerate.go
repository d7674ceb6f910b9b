package optimize

import (
	"cmp"
	"context"
	"slices"

	"toewright/optimize/nlp"
)

// GridTried is what part i of n of the points of a grid come to, the best first, as far as it
// takes to know the best of the whole; so that other processes may try them.
type GridTried struct {
	Stage  int          `json:"stage"` // 0 of the grids themselves, else a coarser one
	Part   int          `json:"part"`
	Of     int          `json:"of"`
	Points []TriedPoint `json:"points"`
}

// TriedPoint is a point of a grid.
type TriedPoint struct {
	Number int     `json:"number"`
	Value  float64 `json:"value"`         // of the objective
	Held   *bool   `json:"held,omitzero"` // whether it holds the limits; nil where nobody looked
}

// TryGrids tries part i of n of the grid points that [ToeSearch.Round] tries one by one
// whatever the answer is; those of the stages that it comes to the end of where the context
// ends. Of the settings, which may be nil, it takes the progress function.
func (p *ToeSearch) TryGrids(ctx context.Context, grids []Grid, s *Settings, i, n int) (list []GridTried, err error) {
	if err := p.fits(make([]float64, len(grids)), grids); err != nil {
		return nil, err
	}
	g, err := newGridSearch(ctx, p, newToeModel(p), grids, s)
	if err != nil {
		return nil, err
	}
	for stage := range len(coarser) + 1 {
		axes, count := g.stage(stage)
		if count == 0 {
			continue
		}
		from, to := 0.0, 1.0
		if stage > 0 {
			from, to = float64(stage-1)/float64(len(coarser)), float64(stage)/float64(len(coarser))
		}
		points := g.try(axes, i, n, count, from, to)
		g.look(axes, points, n)
		if ctx.Err() != nil {
			break
		}
		list = append(list, GridTried{stage, i, n, points[:min(len(points), g.most())]})
		if stage == 0 {
			break
		}
	}
	return list, nil
}

// most is how many of the best points are looked at, at most.
func (g *gridSearch) most() int {
	if len(g.m.limits) == 0 {
		return keptPoints
	}
	return limitChecks + keptPoints
}

// stage returns the grids of a stage and how many points they have: 0 where those are too many
// to be tried one by one, or something is to be fitted at each.
func (g *gridSearch) stage(k int) (axes []gridAxis, count int) {
	axes, most := slices.Clone(g.axes), enumerated
	if k > 0 {
		most = coarseEnumerated
	}
	count = 1
	for i := range axes {
		if k > 0 {
			axes[i] = axes[i].coarsened(coarser[k-1])
		}
		if !axes[i].gridded() || axes[i].count() > most/count {
			return nil, 0
		}
		count *= axes[i].count()
	}
	return axes, count
}

// numbered sets x to a point of some axes by its number.
func numbered(axes []gridAxis, number int, x []float64) {
	for k := range axes {
		x[k] = axes[k].value(number % axes[k].count())
		number /= axes[k].count()
	}
}

// enumerate tries all points of a stage where it has few enough: those that there are by then
// where the context ends. It returns false where there are more, or the limits are held by none
// of the first. Its progress is from one fraction of the whole to another.
func (g *gridSearch) enumerate(stage int, from, to float64) bool {
	axes, count := g.stage(stage)
	if count == 0 {
		return false
	}
	points, ok := g.known(stage)
	if !ok {
		points = g.try(axes, 0, 1, count, from, to)
	}
	return g.offerHeld(axes, points)
}

// known returns the points of a stage that others have tried, the best first; false where some
// of them are missing.
func (g *gridSearch) known(stage int) (points []TriedPoint, ok bool) {
	parts, of := 0, 0
	for i := range g.p.Tried {
		if t := &g.p.Tried[i]; t.Stage == stage {
			parts, of = parts+1, t.Of
			points = append(points, t.Points...)
		}
	}
	slices.SortFunc(points, before)
	return points, parts > 0 && parts == of
}

// before orders points by their figure, and those of one figure by number.
func before(a, b TriedPoint) int {
	return cmp.Or(cmp.Compare(a.Value, b.Value), cmp.Compare(a.Number, b.Number))
}

// try returns the figures of part i of n of so many points, the best first: those whose cars
// reach the window.
func (g *gridSearch) try(axes []gridAxis, i, n, count int, from, to float64) []TriedPoint {
	points := make([]TriedPoint, 0, count/n+1)
	v := nlp.Values{R: make([]float64, g.m.Size().Residuals)}
	x := make([]float64, len(axes))
	for number := i; number < count; number += n {
		if number/n%cancelEvery == 0 {
			if g.ctx.Err() != nil {
				break
			}
			g.report(from + (to-from)*float64(number)/float64(count))
		}
		if numbered(axes, number, x); g.m.residuals(x, &v) {
			points = append(points, TriedPoint{Number: number, Value: g.o.Value(v.R)})
		}
	}
	slices.SortFunc(points, before)
	return points
}

// look says of the best points of one of n parts whether they hold the limits: of as many as
// it takes to find its share of those that are kept, and a few more.
func (g *gridSearch) look(axes []gridAxis, points []TriedPoint, n int) {
	const more = 8
	held := 0
	if len(g.m.limits) == 0 {
		return
	}
	for i := range points {
		if held >= keptPoints/n+more || i >= limitChecks+held || g.ctx.Err() != nil {
			return
		}
		if points[i].Held = new(g.holds(axes, &points[i])); *points[i].Held {
			held++
		}
	}
}

// holds reports whether a point holds the limits.
func (g *gridSearch) holds(axes []gridAxis, pt *TriedPoint) bool {
	switch {
	case len(g.m.limits) == 0:
		return true
	case pt.Held != nil:
		return *pt.Held
	}
	x := make([]float64, len(axes))
	numbered(axes, pt.Number, x)
	return g.m.holds(x)
}

// offerHeld offers the best of some points that hold the limits.
func (g *gridSearch) offerHeld(axes []gridAxis, points []TriedPoint) bool {
	held := 0
	for i := range points {
		pt := &points[i]
		if held >= keptPoints || g.ctx.Err() != nil {
			break
		}
		if i >= limitChecks+held {
			return held > 0
		}
		if g.holds(axes, pt) {
			held++
			x := make([]float64, len(axes))
			numbered(axes, pt.Number, x)
			g.offer(gridPoint{x: x, value: pt.Value})
		}
	}
	return true
}
