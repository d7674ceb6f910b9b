package engine

import (
	"context"
	"fmt"
	"math"

	"toewright/optimize"
	"toewright/solver"
)

// validShare is the part of the spread within which simulation and propagation
// must agree for the linear method to count as valid.
const validShare = 0.05

// Result says what the cars of a series tell, or where there are none the context's error.
func (r *ToleranceRun) Result(ctx context.Context, built *Built) (*ToleranceResult, error) {
	w, c := r.window, built.Census
	if c.Cars == 0 {
		return nil, ctx.Err()
	}
	out := &ToleranceResult{
		Units: r.doc.Units, Candidate: r.car.name, Window: Window{w.Bump, w.Droop, w.Step}, Side: sideNames[r.series.Sides],
		Cars: c.Cars, Failed: c.Failed, Seed: r.seed, StaticToe: r.toe(),
		Positions: r.positions(c), Figure: r.figure(c), Contributors: r.contributors(r.spread),
	}
	out.Loads = r.loads()
	out.Scenarios = r.scenariosOf(built)
	out.ScenarioYield = yieldOver(out.Scenarios)
	out.LinearValid = r.linearValid(out.Positions, r.spread.Widest)
	if r.limit != nil {
		share, low, high := c.Yield()
		out.Yield = &YieldResult{
			Limit: *r.limit, AsDrawn: float64(out.Figure.Nominal) <= *r.limit,
			Share: Number(share), Low: Number(low), High: Number(high),
		}
	}
	return out, nil
}

// loads returns the largest loads of the car as drawn, and how they spread.
func (r *ToleranceRun) loads() []LoadPeak {
	list := r.peaksOf(r.spread.Car, r.ws)
	var sd []float64
	for i := range r.spread.Errors {
		sd = append(sd, r.spread.Errors[i].SD())
	}
	r.spreadPeaks(list, r.spread.Car, r.spread.By, sd, r.ws)
	return list
}

// toe returns what the series does with static toe.
func (r *ToleranceRun) toe() string {
	if r.series.Built != nil {
		return ToeAsBuilt
	}
	return ToeReSet
}

func (r *ToleranceRun) positions(c *optimize.Census) []TolerancePosition {
	band := c.Band(0.025, 0.5, 0.975)
	out := make([]TolerancePosition, len(r.spread.SD))
	for i := range out {
		out[i] = TolerancePosition{
			Side: r.sideOf(i), Travel: r.grid.file[i%len(r.grid.file)],
			Nominal: degrees(r.spread.Nominal[i]), SD: degrees(r.spread.SD[i]),
			Low: degrees(band[0][i]), Median: degrees(band[1][i]), High: degrees(band[2][i]),
		}
	}
	return out
}

// sideOf returns the side of position i: the left one comes first.
func (t *tolerancer) sideOf(i int) string {
	if i >= len(t.grid.file) || t.series.Sides == solver.RightOnly {
		return solver.Right.String()
	}
	return solver.Left.String()
}

func (r *ToleranceRun) figure(c *optimize.Census) ToleranceFigure {
	at := func(share float64) Number { return degrees(c.Percentile(share).Radians()) }
	out := ToleranceFigure{
		Name: r.series.Measure.String(), Nominal: degrees(r.series.Figure(r.spread.Nominal).Radians()),
		Median: at(0.5), Percentile90: at(0.9), Percentile95: at(0.95), Percentile99: at(0.99),
	}
	if c.Cars > 0 && !out.Percentile99.Valid() {
		out.Problem = fmt.Sprintf("%d of %d cars cannot be built or do not reach the window: a percentile that falls among them has no figure", c.Failed, c.Cars)
	}
	return out
}

func (t *tolerancer) contributors(p *optimize.Spread) []Contributor {
	var gains []float64
	if t.limit != nil {
		gains = t.series.Halve(p)
	}
	var out []Contributor
	for _, k := range p.Ranking() {
		c := Contributor{Parameter: t.series.Tolerances[k].Key(), Share: Number(p.Shares[k]), Halved: none}
		if gains != nil {
			c.Halved = Number(gains[k])
		}
		out = append(out, c)
	}
	return out
}

// linearValid compares the ends of the interval by both methods where the spread
// is widest.
func (t *tolerancer) linearValid(ps []TolerancePosition, widest int) bool {
	const end = 1.959963984540054 // of a normal 95 % interval, in standard deviations
	p := ps[widest]
	within := validShare * end * float64(p.SD)
	low := float64(p.Nominal) - end*float64(p.SD)
	high := float64(p.Nominal) + end*float64(p.SD)
	return math.Abs(low-float64(p.Low)) <= within && math.Abs(high-float64(p.High)) <= within
}
