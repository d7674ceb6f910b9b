package nlp

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// peaks is the weighted mean of the bundles' largest sizes: a linear program with
// one extra for each bundle, and a row for each side of each residual that can be
// the largest within the trust region.
type peaks struct {
	scale *scale
	rows  []peakRow // of the last program, in order
}

// peakRow is one side of one residual.
type peakRow struct {
	residual int
	factor   float64 // the residual's weight, negative for the lower side
}

func newPeaks(s *scale) *peaks { return &peaks{scale: s} }

func (f *peaks) extras() int { return len(f.scale.shares) }

func (f *peaks) cost(r []float64) float64 { return f.scale.value(r) }

func (f *peaks) fill(p *program, v *Values, secant *mat.SymDense, radius float64) {
	putHessian(p, p.h, p.hessian(secant), radius*radius)
	n := v.JR.RawMatrix().Cols
	tops, units, floors := f.bounds(v, radius)
	f.rows = f.rows[:0]
	for e, share := range f.scale.shares {
		p.c[n+e] = share * units[e]
	}
	for _, g := range f.scale.spans {
		e := g.bundle
		for i := g.from; i < g.to; i++ {
			reach := f.reach(v, i, radius)
			for _, w := range [2]float64{f.scale.weights[i], -f.scale.weights[i]} {
				if w*v.R[i]+reach >= floors[e] {
					f.addRow(p, v, peakRow{i, w}, radius, tops[e])[n+e] = -units[e]
				}
			}
		}
	}
}

// addRow bounds one side of a residual by top, and returns the row for the
// extra to be put in.
func (f *peaks) addRow(p *program, v *Values, side peakRow, radius, top float64) []float64 {
	row := p.addRow(top - side.factor*v.R[side.residual])
	for j, d := range v.JR.RawRowView(side.residual) {
		row[j] = side.factor * d * radius
	}
	f.rows = append(f.rows, side)
	return row
}

// bounds returns for each extra the size that it stands for at no step, its
// unit, and the least size that any step can reach to first order.
func (f *peaks) bounds(v *Values, radius float64) (tops, units, floors []float64) {
	n := f.extras()
	tops, units, floors = make([]float64, n), make([]float64, n), make([]float64, n)
	for _, g := range f.scale.spans {
		e := g.bundle
		for i := g.from; i < g.to; i++ {
			size := f.scale.weights[i] * math.Abs(v.R[i])
			tops[e] = math.Max(tops[e], size)
			units[e] = math.Max(units[e], f.scale.weights[i]*radius*largest(v.JR, i))
			floors[e] = math.Max(floors[e], size-f.reach(v, i, radius))
		}
	}
	for e := range units {
		units[e] = rise(units[e])
	}
	return tops, units, floors
}

// reach returns by how much a step can change a weighted residual at most.
func (f *peaks) reach(v *Values, i int, radius float64) float64 {
	sum := 0.0
	for _, d := range v.JR.RawRowView(i) {
		sum += math.Abs(d)
	}
	return f.scale.weights[i] * radius * sum
}

func (f *peaks) costGradient(y, _, multipliers []float64) {
	clear(y)
	for k, row := range f.rows {
		y[row.residual] += row.factor * multipliers[k]
	}
}
