package optimize

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// worstSquare is half the largest mean square among groups: one extra bounds
// the groups' figures, each of which is a row with a quadratic part. Since the
// rows' multipliers sum to 1, the curvature estimate may stand in each of them.
type worstSquare struct {
	scale *scale
}

func newWorstSquare(s *scale) *worstSquare { return &worstSquare{scale: s} }

func (f *worstSquare) extras() int { return 1 }

func (f *worstSquare) cost(r []float64) float64 {
	top := 0.0
	for _, g := range f.scale.spans {
		top = math.Max(top, f.group(g, r))
	}
	return top
}

// group returns half the mean square of one group.
func (f *worstSquare) group(g span, r []float64) float64 { return f.scale.meanSquare(g, r) / 2 }

func (f *worstSquare) fill(p *program, v *Values, bend *mat.SymDense, radius float64) {
	n := v.JR.RawMatrix().Cols
	top, change := f.cost(v.R), 0.0
	first := p.rows()
	for k, g := range f.scale.spans {
		row := p.addRow(top - f.group(g, v.R))
		addGradient(row, v, f.scale.weights, g.from, g.to, radius)
		hessian, q := p.hessian(bend), p.bendRow(first+k)
		addSquares(hessian, v.JR, f.scale.weights, g.from, g.to, 1)
		putHessian(p, q, hessian, radius*radius)
		change = math.Max(change, math.Max(maxAbs(row), maxAbs(q)))
	}
	p.c[n] = rise(change)
	for k := range f.scale.spans {
		p.row(first + k)[n] = -p.c[n]
	}
}

func (f *worstSquare) pull(y, r, multipliers []float64) {
	shares := multipliers[:len(f.scale.spans)]
	total := floats.Sum(shares)
	clear(y)
	for k, g := range f.scale.spans {
		for i := g.from; i < g.to; i++ {
			y[i] = shares[k] / total * f.scale.weights[i] * r[i]
		}
	}
}
