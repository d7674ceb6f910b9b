package engine

import (
	"math"

	"toewright/optimize"
	"toewright/solver"
)

// validShare is the part of the spread within which simulation and propagation
// must agree for the linear method to count as valid.
const validShare = 0.05

// staticToeReset is what a series does with static toe.
const staticToeReset = "set again on each car"

func (t *tolerancer) result(p *optimize.Spread, s *optimize.Sample) *ToleranceResult {
	w := t.window
	out := &ToleranceResult{
		Units: t.doc.Units, Candidate: t.car.name, Window: Window{w.Bump, w.Droop, w.Step},
		Cars: s.Cars, Failed: s.Failed(), Seed: t.seed, StaticToe: staticToeReset,
		Positions: t.positions(p, s), Figure: t.figure(p, s), Contributors: t.contributors(p),
	}
	out.LinearValid = t.linearValid(out.Positions, p.Widest)
	if t.limit > 0 {
		share, low, high := s.Yield(t.series.Measure, t.series.Limit)
		out.Yield = &YieldResult{t.limit, Number(share), Number(low), Number(high)}
	}
	return out
}

func (t *tolerancer) positions(p *optimize.Spread, s *optimize.Sample) []TolerancePosition {
	band := s.Band(0.025, 0.5, 0.975)
	out := make([]TolerancePosition, len(p.SD))
	for i := range out {
		out[i] = TolerancePosition{
			Side: t.sideOf(i), Travel: t.grid.file[i%len(t.grid.file)],
			Nominal: degrees(p.Nominal[i]), SD: degrees(p.SD[i]),
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

func (t *tolerancer) figure(p *optimize.Spread, s *optimize.Sample) ToleranceFigure {
	var cars []float64
	for _, x := range s.Figures(t.series.Measure) {
		if !math.IsNaN(x) {
			cars = append(cars, x)
		}
	}
	q := optimize.Quantiles(cars, 0.5, 0.9, 0.95, 0.99)
	o := optimize.Objective{Measure: t.series.Measure}
	return ToleranceFigure{
		Name: t.series.Measure.String(), Nominal: degrees(o.Value(p.Nominal)),
		Median: degrees(q[0]), Percentile90: degrees(q[1]), Percentile95: degrees(q[2]), Percentile99: degrees(q[3]),
	}
}

func (t *tolerancer) contributors(p *optimize.Spread) []Contributor {
	var gains []optimize.Halved
	if t.limit > 0 {
		gains = t.series.Halve(p)
	}
	var out []Contributor
	for _, k := range p.Ranking() {
		c := Contributor{Parameter: p.Errors[k].Key(), Share: Number(p.Shares[k]), Halved: none}
		if gains != nil {
			c.Halved = Number(gains[k].Gain)
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
