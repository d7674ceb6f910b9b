package nlp

import "gonum.org/v1/gonum/mat"

// meanSquare is half the weighted mean square of all residuals: a quadratic
// program without rows of its own.
type meanSquare struct {
	weights []float64 // of each residual, summing to 1
}

func newMeanSquare(s *scale) *meanSquare {
	f := &meanSquare{weights: make([]float64, len(s.weights))}
	for _, g := range s.spans {
		for i := g.from; i < g.to; i++ {
			f.weights[i] = s.shares[g.bundle] * s.weights[i]
		}
	}
	return f
}

func (f *meanSquare) extras() int { return 0 }

func (f *meanSquare) cost(r []float64) float64 {
	sum := 0.0
	for i, w := range f.weights {
		sum += w * r[i] * r[i]
	}
	return sum / 2
}

func (f *meanSquare) fill(p *program, v *Values, secant *mat.SymDense, radius float64) {
	addGradient(p.c, v, f.weights, 0, len(f.weights), radius)
	hessian := p.hessian(secant)
	addSquares(hessian, v.JR, f.weights, 0, len(f.weights), 1)
	putHessian(p, p.h, hessian, radius*radius)
}

func (f *meanSquare) costGradient(y, r, _ []float64) {
	for i, w := range f.weights {
		y[i] = w * r[i]
	}
}
