package engine

import (
	"context"
	"errors"

	"toewright/optimize"
	"toewright/solver"
)

// ToleranceScenario is a series of cars in one set-up of the study's search: the first
// [setUpCars] of the series, or all where it is shorter.
type ToleranceScenario struct {
	Name   string  `json:"name"`
	Weight float64 `json:"weight"`
	// Nominal is the series' figure of the car as drawn, Percentile95 that which
	// 95 of a hundred cars do not exceed; none where it falls among those that fail.
	Nominal      Number `json:"nominal"`
	Percentile95 Number `json:"percentile95"`
	Failed       int    `json:"failed"` // cars that cannot be built or do not reach the window
	Yield        Number `json:"yield"`  // share of the cars that pass; none without a limit
	Binds        bool   `json:"binds"`  // of all set-ups it has the largest Percentile95
	// Decides names the dimension with the largest share of the variance.
	Decides string        `json:"decides"`
	Curves  []SpreadCurve `json:"curves"`
	Problem string        `json:"problem,omitzero"` // why there are no figures
}

// SpreadCurve is the toe of one wheel along its travel and how far it spreads.
type SpreadCurve struct {
	Side   string    `json:"side"`
	Travel []float64 `json:"travel"`
	Change []Number  `json:"change"` // of the car as drawn, less target
	SD     []Number  `json:"sd"`
}

// setUpCars is the most cars that are built in each set-up: their 95th percentile is
// uncertain by some 1 % of the spread.
const setUpCars = 10_000

// setUpSeries is the series in one set-up of the study's search.
type setUpSeries struct {
	*setUp
	series  *optimize.Series
	spread  *optimize.Spread
	problem error // why there is none
}

// seriesIn returns the study's series with its cars in a set-up, which has the last
// word on what both set.
func (t *tolerancer) seriesIn(up *setUp) setUpSeries {
	s := t.series
	s.Changes = append(append([]solver.Change(nil), t.series.Changes...), up.Changes...)
	s.From = up.From
	if up.holds {
		s.Hold = up.Hold
	}
	out := setUpSeries{setUp: up, series: &s}
	if s.Built != nil {
		drawn, err := t.base.Assemble(s.Changes, s.Hold)
		if err == nil {
			err = s.LeaveToe(drawn)
		}
		out.problem = err
	}
	if out.problem == nil {
		out.spread, out.problem = s.Propagate()
	}
	return out
}

// count builds cars of the set-up, fewer where the context ends; nil where it has none.
func (u *setUpSeries) count(ctx context.Context, cars optimize.Span, progress stage) *optimize.Census {
	if u.problem != nil {
		return nil
	}
	c, _ := u.series.Count(ctx, u.spread, cars, optimize.Parallel{Progress: progress.items(cars.Len())}) // the spread's check was the same
	return c
}

// scenariosOf returns the series in each set-up, of the cars built there.
func (t *ToleranceRun) scenariosOf(b *Built) (out []ToleranceScenario) {
	worst := -1
	for i := range t.setUps {
		out = append(out, t.inSetUp(&t.setUps[i], b.InSetUps[i]))
		if p := out[i].Percentile95; p.Valid() && !(worst >= 0 && p <= out[worst].Percentile95) {
			worst = i
		}
	}
	if worst >= 0 && len(out) > 1 {
		out[worst].Binds = true
	}
	return out
}

// errFewBuilt is why a set-up whose cars are not all built has no figures.
var errFewBuilt = errors.New("cancelled before its cars were built")

// inSetUp returns the series in one set-up. One that was cancelled says so, and has no
// figures.
func (t *ToleranceRun) inSetUp(up *setUpSeries, c *optimize.Census) ToleranceScenario {
	out := ToleranceScenario{Name: up.Name, Weight: up.Weight, Nominal: none, Percentile95: none, Yield: none, Curves: []SpreadCurve{}}
	err := up.problem
	if err == nil && c.Cars < t.inEach() {
		err = errFewBuilt
	}
	if err != nil {
		out.Problem = t.doc.Units.Sentence(bare(err))
		return out
	}
	s, p := up.series, up.spread
	out.Nominal, out.Percentile95 = degrees(s.Figure(p.Nominal).Radians()), degrees(c.Percentile(0.95).Radians())
	out.Failed = c.Failed
	if t.limit != nil {
		share, _, _ := c.Yield()
		out.Yield = Number(share)
	}
	out.Decides = s.Tolerances[p.Ranking()[0]].Key()
	for i, side := range sidesOf(s.Sides) {
		out.Curves = append(out.Curves, t.spreadCurve(p, side, i*len(t.grid.file)))
	}
	return out
}

// spreadCurve returns the curve of one side, which begins at a place of p.
func (t *tolerancer) spreadCurve(p *optimize.Spread, side solver.Side, at int) SpreadCurve {
	c := SpreadCurve{Side: side.String(), Travel: t.grid.file}
	for i := range t.grid.file {
		c.Change, c.SD = append(c.Change, degrees(p.Nominal[at+i])), append(c.SD, degrees(p.SD[at+i]))
	}
	return c
}

// yieldOver returns the weighted mean of the set-ups' yields: of all cars, where as
// many are of each set-up as its weight says. It is none where one has none.
func yieldOver(list []ToleranceScenario) Number {
	sum, weight := Number(0), Number(0)
	for i := range list {
		sum, weight = sum+Number(list[i].Weight)*list[i].Yield, weight+Number(list[i].Weight)
	}
	return sum / weight
}
