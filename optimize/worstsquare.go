package optimize

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// worstSquare is half the largest mean square among groups. One extra t bounds
// each group's first-order figure; the Hessian is that of the groups, shared
// out by the multipliers of the step before.
type worstSquare struct {
	scale  *scale
	shares []float64 // multiplier of each group, summing to 1
	known  bool      // whether a step has set the shares
}

func newWorstSquare(s *scale) *worstSquare {
	return &worstSquare{scale: s, shares: make([]float64, len(s.spans))}
}

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

// addGauss also sets the shares where no step has yet: all on the worst group.
func (f *worstSquare) addGauss(h *mat.SymDense, v *Values) {
	if !f.known {
		worst := 0
		for k, g := range f.scale.spans {
			if f.group(g, v.R) > f.group(f.scale.spans[worst], v.R) {
				worst = k
			}
		}
		clear(f.shares)
		f.shares[worst] = 1
	}
	part := mat.NewSymDense(h.SymmetricDim(), nil)
	for k, g := range f.scale.spans {
		part.Zero()
		addSquares(part, v.JR, f.scale.weights, g.from, g.to)
		part.ScaleSym(f.shares[k], part)
		h.AddSym(h, part)
	}
}

func (f *worstSquare) fill(p *program, v *Values, radius float64) {
	n := v.JR.RawMatrix().Cols
	top, change := f.cost(v.R), 0.0
	first := p.rows()
	for _, g := range f.scale.spans {
		row := p.addRow(top - f.group(g, v.R))
		addGradient(row, v, f.scale.weights, g.from, g.to, radius)
		change = math.Max(change, maxAbs(row))
	}
	unit := rise(change)
	for k := range f.scale.spans {
		p.row(first + k)[n] = -unit
	}
	p.c[n] = unit
}

func (f *worstSquare) pull(y, r, multipliers []float64) {
	f.known = true
	copy(f.shares, multipliers)
	floats.Scale(1/floats.Sum(f.shares), f.shares)
	clear(y)
	for k, g := range f.scale.spans {
		for i := g.from; i < g.to; i++ {
			y[i] = f.shares[k] * f.scale.weights[i] * r[i]
		}
	}
}
