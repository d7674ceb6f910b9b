package nlp

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// worstSquare is half the weighted mean, over the bundles, of the largest mean
// square among a bundle's spans: one extra for each bundle bounds the spans' figures,
// each of which is a row with a quadratic part. Since the rows' multipliers sum to 1,
// the curvature estimate may stand in each of them.
type worstSquare struct {
	scale *scale
}

func newWorstSquare(s *scale) *worstSquare { return &worstSquare{scale: s} }

func (f *worstSquare) extras() int { return len(f.scale.shares) }

func (f *worstSquare) cost(r []float64) float64 {
	return f.scale.combine(func(g span) float64 { return f.figure(g, r) })
}

// figure returns half the mean square of one span.
func (f *worstSquare) figure(g span, r []float64) float64 { return f.scale.meanSquare(g, r) / 2 }

// tops returns the figure of each bundle.
func (f *worstSquare) tops(r []float64) []float64 {
	tops := make([]float64, len(f.scale.shares))
	for _, g := range f.scale.spans {
		tops[g.bundle] = math.Max(tops[g.bundle], f.figure(g, r))
	}
	return tops
}

func (f *worstSquare) fill(p *program, v *Values, secant *mat.SymDense, radius float64) {
	n := v.JR.RawMatrix().Cols
	tops, units := f.tops(v.R), make([]float64, len(f.scale.shares))
	first := p.rows()
	for k, g := range f.scale.spans {
		row := p.addRow(tops[g.bundle] - f.figure(g, v.R))
		addGradient(row, v, f.scale.weights, g.from, g.to, radius)
		hessian, q := p.hessian(secant), p.addQuadratic(first+k)
		addSquares(hessian, v.JR, f.scale.weights, g.from, g.to, 1)
		putHessian(p, q, hessian, radius*radius)
		units[g.bundle] = math.Max(units[g.bundle], math.Max(maxAbs(row), maxAbs(q)))
	}
	for b, share := range f.scale.shares {
		units[b] = rise(units[b])
		p.c[n+b] = share * units[b]
	}
	for k, g := range f.scale.spans {
		p.row(first + k)[n+g.bundle] = -units[g.bundle]
	}
}

func (f *worstSquare) costGradient(y, r, multipliers []float64) {
	own := multipliers[:len(f.scale.spans)]
	total := floats.Sum(own)
	clear(y)
	for k, g := range f.scale.spans {
		for i := g.from; i < g.to; i++ {
			y[i] = own[k] / total * f.scale.weights[i] * r[i]
		}
	}
}
