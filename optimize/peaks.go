package optimize

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// peaks is the weighted mean of the groups' largest sizes, or the largest of
// all: a linear program with one extra for each group and two rows for each
// residual.
type peaks struct {
	scale *scale
	spans []span // one in all for Worst
}

func newPeaks(s *scale) *peaks { return &peaks{scale: s, spans: s.spans} }

func (f *peaks) extras() int {
	if f.scale.across == Worst {
		return 1
	}
	return len(f.spans)
}

// extra returns which extra bounds group k.
func (f *peaks) extra(k int) int {
	if f.scale.across == Worst {
		return 0
	}
	return k
}

func (f *peaks) cost(r []float64) float64 { return f.scale.value(r) }

func (f *peaks) addGauss(*mat.SymDense, *Values) {}

func (f *peaks) fill(p *program, v *Values, radius float64) {
	n := v.JR.RawMatrix().Cols
	tops, units := f.tops(v.R), f.units(v.JR, radius)
	for e, unit := range units {
		p.c[n+e] = unit
	}
	for k, g := range f.spans {
		e := f.extra(k)
		if f.scale.across == Mean {
			p.c[n+e] *= g.share
		}
		for i := g.from; i < g.to; i++ {
			f.addPair(p, v, i, radius, tops[e], n+e, -units[e])
		}
	}
}

// addPair bounds the weighted residual i from both sides by top plus an extra.
func (f *peaks) addPair(p *program, v *Values, i int, radius, top float64, extra int, unit float64) {
	for _, sign := range [2]float64{1, -1} {
		w := sign * f.scale.weights[i]
		row := p.addRow(top - w*v.R[i])
		for j, d := range v.JR.RawRowView(i) {
			row[j] = w * d * radius
		}
		row[extra] = unit
	}
}

// tops returns the size that each extra stands for at no step.
func (f *peaks) tops(r []float64) []float64 {
	tops := make([]float64, f.extras())
	for k, g := range f.spans {
		e := f.extra(k)
		tops[e] = math.Max(tops[e], f.scale.peak(g, r))
	}
	return tops
}

// units returns the scale of each extra.
func (f *peaks) units(jac *mat.Dense, radius float64) []float64 {
	units := make([]float64, f.extras())
	for k, g := range f.spans {
		e := f.extra(k)
		for i := g.from; i < g.to; i++ {
			units[e] = math.Max(units[e], f.scale.weights[i]*radius*largest(jac, i))
		}
	}
	for e := range units {
		units[e] = rise(units[e])
	}
	return units
}

func (f *peaks) pull(y, _, multipliers []float64) {
	clear(y)
	row := 0
	for _, g := range f.spans {
		for i := g.from; i < g.to; i++ {
			y[i] = f.scale.weights[i] * (multipliers[row] - multipliers[row+1])
			row += 2
		}
	}
}
