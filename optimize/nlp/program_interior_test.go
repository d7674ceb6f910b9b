package nlp

import (
	"math"
	"math/rand/v2"
	"testing"
)

// constraint is row·x <= bound.
type constraint struct {
	row   []float64
	bound float64
}

// newProgram builds a program from plain slices.
func newProgram(h, c []float64, constraints []constraint) *program {
	p := &program{}
	p.reset(len(c))
	copy(p.h, h)
	copy(p.c, c)
	for _, k := range constraints {
		copy(p.addRow(k.bound), k.row)
	}
	return p
}

func TestProgramSolve(t *testing.T) {
	box := []constraint{{[]float64{1, 0}, 1}, {[]float64{-1, 0}, 1}, {[]float64{0, 1}, 1}, {[]float64{0, -1}, 1}}
	const tol = 1e-9 // a hundred times the solver's own
	tests := []struct {
		name        string
		h, c        []float64
		constraints []constraint
		x, lambda   []float64
	}{
		{"free minimum", []float64{2, 0, 0, 4}, []float64{-1, 2}, box, []float64{0.5, -0.5}, []float64{0, 0, 0, 0}},
		{"minimum beyond a bound", []float64{1, 0, 0, 1}, []float64{-3, 0.25}, box, []float64{1, -0.25}, []float64{2, 0, 0, 0}},
		{"linear, at a corner", make([]float64, 4), []float64{-1, 2}, box, []float64{1, -1}, []float64{1, 0, 0, 2}},
		// minimise x²+y² on x+y >= 1: both 1/2, multiplier 1.
		{"oblique row", []float64{2, 0, 0, 2}, []float64{0, 0}, append(box[:4:4], constraint{[]float64{-1, -1}, -1}), []float64{0.5, 0.5}, []float64{0, 0, 0, 0, 1}},
		{"scale of 1e-9", []float64{1e-9, 0, 0, 1e-9}, []float64{-3e-9, 0}, box, []float64{1, 0}, []float64{2e-9, 0, 0, 0}},
		{"no constraint", []float64{2, 1, 1, 2}, []float64{-3, -3}, nil, []float64{1, 1}, nil},
		{"nothing to do", make([]float64, 4), []float64{0, 0}, box, []float64{0, 0}, []float64{0, 0, 0, 0}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			x, lambda := newProgram(tt.h, tt.c, tt.constraints).solve()
			if !nearAll(x, tt.x, tol) {
				t.Errorf("solve() x = %v, want %v", x, tt.x)
			}
			if !nearAll(lambda, tt.lambda, tol) {
				t.Errorf("solve() multipliers = %v, want %v", lambda, tt.lambda)
			}
		})
	}
}

// randomProgram returns a convex program within a box, with a positive
// semidefinite Hessian of half rank and rows that the origin satisfies, some of
// them with a quadratic part.
func randomProgram(rng *rand.Rand) *program {
	n := 1 + rng.IntN(8)
	p := &program{}
	p.reset(n)
	addRandomSquares(rng, p.h, n)
	copy(p.c, normals(rng, n))
	for j := range n {
		p.addRow(1)[j] = 1
		p.addRow(1)[j] = -1
	}
	for range rng.IntN(4 * n) {
		copy(p.addRow(rng.Float64()), normals(rng, n))
		if rng.IntN(4) == 0 {
			addRandomSquares(rng, p.addQuadratic(p.rows()-1), n)
		}
	}
	return p
}

// addRandomSquares adds about n/2 random squares to an n×n matrix.
func addRandomSquares(rng *rand.Rand, h []float64, n int) {
	for range (n + 1) / 2 {
		v := normals(rng, n)
		for i := range n {
			for j := range n {
				h[i*n+j] += v[i] * v[j]
			}
		}
	}
}

// at returns the gradient and the value of row i at x, quadratic part included.
func (p *program) at(i int, x []float64) (gradient []float64, value float64) {
	gradient = append(gradient, p.row(i)...)
	value = dot(gradient, x)
	for _, b := range p.quadratics {
		if b.row == i {
			value += quadraticForm(b.q, x) / 2
			for j := range x {
				gradient[j] += dot(b.q[j*p.n:(j+1)*p.n], x)
			}
		}
	}
	return gradient, value
}

func normals(rng *rand.Rand, n int) []float64 {
	s := make([]float64, n)
	for i := range s {
		s[i] = rng.NormFloat64()
	}
	return s
}

// TestProgramOptimality checks the conditions that single out the minimum of a
// convex program: feasible, multipliers not negative, each zero unless its row
// holds, and the gradient balanced by the rows.
func TestProgramOptimality(t *testing.T) {
	const tol = 1e-8
	rng := rand.New(rand.NewPCG(1, 2))
	for trial := range 300 {
		p := randomProgram(rng)
		x, lambda := p.solve()
		gradient := append([]float64(nil), p.c...)
		for j := range gradient {
			gradient[j] += dot(p.h[j*p.n:(j+1)*p.n], x)
		}
		for i := range p.rows() {
			g, value := p.at(i, x)
			for j, v := range g {
				gradient[j] += lambda[i] * v
			}
			slack := p.b[i] - value
			if !(slack >= -tol) || !(lambda[i] >= 0) || !near(math.Min(slack, lambda[i]), 0, 1e-5) {
				t.Fatalf("trial %d: row %d has slack %g and multiplier %g, want both at least 0 and one 0", trial, i, slack, lambda[i])
			}
		}
		if top := maxAbs(gradient); !near(top, 0, tol) {
			t.Fatalf("trial %d: gradient of the Lagrangian = %g, want 0", trial, top)
		}
	}
}

// TestProgramBend minimises -x-y over the disc x²+y² <= 2: at (1, 1), where the
// multiplier m has m·2x/2 = 1 for the row ½(x²+y²) <= 1.
func TestProgramBend(t *testing.T) {
	for _, size := range []float64{1, 1e-6, 1e6} {
		p := newProgram(make([]float64, 4), []float64{-1, -1}, []constraint{{[]float64{-1, 0}, 2}, {[]float64{0, 0}, size}, {[]float64{0, -1}, 2}, {[]float64{1, 1}, 4}})
		q := p.addQuadratic(1)
		q[0], q[3] = size, size
		x, lambda := p.solve()
		if !nearAll(x, []float64{1, 1}, 1e-9) || !near(lambda[1]*size, 1, 1e-9) {
			t.Errorf("size %g: x, multiplier = %v, %g, want (1, 1), %g", size, x, lambda[1], 1/size)
		}
	}
}

func TestActive(t *testing.T) {
	p := newProgram([]float64{1}, []float64{-3}, []constraint{{[]float64{1}, 1}, {[]float64{-1}, 1}})
	p.solve()
	if got := [2]bool{p.active(0), p.active(1)}; got != [2]bool{true, false} {
		t.Errorf("active = %v, want the upper bound only", got)
	}
}

func BenchmarkProgramSolve(b *testing.B) {
	p := randomProgram(rand.New(rand.NewPCG(3, 4)))
	b.ReportAllocs()
	for b.Loop() {
		p.solve()
	}
}
