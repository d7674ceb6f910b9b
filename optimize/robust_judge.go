package optimize

import (
	"context"
	"math"
	"slices"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// Percentile is the figure that a share of all cars stays within.
type Percentile struct {
	// Value is NaN where it falls among cars that cannot be built or do not reach the
	// window, which are worse than all others.
	Value solver.Angle
	// Low to High is where it lies by what chance there was in the cars drawn: 95 of a
	// hundred such bands hold that of all cars. High is infinite where such cars begin
	// within it.
	Low, High solver.Angle
}

const (
	// judgedCars are built to judge a design, in all scenarios together: the 95th and
	// the 99th percentile of so many have a standard deviation of some 0.7 %.
	judgedCars = 30_000
	// hastyCars are built of a car that is no answer.
	hastyCars = 5_000
	// cancelledCars are built where the search was cancelled: nobody waits longer.
	cancelledCars = 200
)

// judged builds so many cars of the design at x, other ones than the search saw, and
// returns their percentile.
func (r *robustModel) judged(ctx context.Context, x []float64, cars int) Percentile {
	if figures := r.figures(ctx, x, cars); ctx.Err() == nil {
		return percentileOf(figures, r.p.share())
	}
	return percentileOf(r.figures(context.WithoutCancel(ctx), x, cancelledCars), r.p.share())
}

// figures returns the figures of so many cars at x, of each scenario as many as its
// weight says; infinite for those that fail.
func (r *robustModel) figures(ctx context.Context, x []float64, cars int) []float64 {
	figures := make([]float64, cars)
	for i, s := range r.series {
		some := r.portion(i, cars)
		if err := r.set(s, r.m.changes(&r.m.scenarios[i], x)); err != nil {
			fail(figures[some.First:some.End])
			continue
		}
		fresh := *s
		fresh.Seed = ^s.Seed
		fresh.figures(ctx, some, figures, func(done int) { r.report(float64(some.First+done) / float64(cars)) })
	}
	return figures
}

// portion returns which of so many cars are in scenario i: a share of its weight.
func (r *robustModel) portion(i, cars int) Span {
	before, all := 0.0, 0.0
	for k := range r.m.scenarios {
		w := r.m.scenarios[k].weight()
		if all += w; k < i {
			before += w
		}
	}
	upTo := func(weight float64) int { return int(math.Round(float64(cars) * weight / all)) }
	return Span{upTo(before), upTo(before + r.m.scenarios[i].weight())}
}

func fail(figures []float64) {
	for i := range figures {
		figures[i] = math.Inf(1)
	}
}

// figures sets those of a span of the series' cars, infinite for those that fail. A
// context that ends leaves some as they are. Report hears how many are done.
func (s *Series) figures(ctx context.Context, cars Span, figures []float64, report func(done int)) {
	divide(ctx, &Parallel{Progress: report}, cars, seriesChunk, s.builder, func(w *seriesWorker, ctx context.Context, some Span) {
		for n := some.First; n < some.End && ctx.Err() == nil; n++ {
			figures[n] = w.build(n).Of(s.Measure).Radians()
			if math.IsNaN(figures[n]) {
				figures[n] = math.Inf(1)
			}
		}
	})
}

// percentileOf returns that of a list of figures, which it sorts, with its band: the
// number of cars below a percentile is binomial, taken as normal.
func percentileOf(figures []float64, share float64) Percentile {
	slices.Sort(figures)
	const z = 1.959963984540054 // of a normal 95 % interval
	n := float64(len(figures))
	half := z * math.Sqrt(share*(1-share)/n)
	at := func(share float64) solver.Angle {
		return solver.Angle(nlp.Quantile(figures, math.Max(0, math.Min(1, share))))
	}
	out := Percentile{Value: at(share), Low: at(share - half), High: at(share + half)}
	if v := float64(out.Value); math.IsInf(v, 1) || math.IsNaN(v) {
		out.Value = solver.Angle(math.NaN())
	}
	return out
}

// less reports whether a percentile is less than another, none being the most.
func (a Percentile) less(b Percentile) bool {
	return a.Value < b.Value || math.IsNaN(float64(b.Value)) && !math.IsNaN(float64(a.Value))
}
