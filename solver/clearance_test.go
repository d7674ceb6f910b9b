package solver_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

func ball(p solver.Vec) solver.Segment { return solver.Segment{A: p, B: p} }

// TestSegmentDistance holds distances that are known by sight.
func TestSegmentDistance(t *testing.T) {
	x := func(a, b float64) solver.Segment { return solver.Segment{A: solver.Vec{X: a}, B: solver.Vec{X: b}} }
	for _, tt := range []struct {
		name string
		a, b solver.Segment
		want float64
	}{
		{"crossing", x(-10, 10), solver.Segment{A: solver.Vec{Y: -5}, B: solver.Vec{Y: 5}}, 0},
		{"skew", x(-10, 10), solver.Segment{A: solver.Vec{Y: -5, Z: 7}, B: solver.Vec{Y: 5, Z: 7}}, 7},
		{"beyond the end", x(-10, 10), solver.Segment{A: solver.Vec{X: 13, Y: -5, Z: 4}, B: solver.Vec{X: 13, Y: 5, Z: 4}}, 5},
		{"parallel", x(0, 10), solver.Segment{A: solver.Vec{X: 2, Y: 3}, B: solver.Vec{X: 30, Y: 3}}, 3},
		{"in line", x(0, 10), x(14, 20), 4},
		{"ball and rod", ball(solver.Vec{X: 5, Y: 6}), x(0, 10), 6},
		{"balls", ball(solver.Vec{X: 3}), ball(solver.Vec{Y: 4}), 5},
	} {
		near(t, tt.name, tt.a.Distance(tt.b), tt.want, 1e-12)
		near(t, tt.name+", swapped", tt.b.Distance(tt.a), tt.want, 1e-12)
	}
}

// TestSegmentDistanceRandom compares with the least over a fine grid of points.
func TestSegmentDistanceRandom(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	point := func() solver.Vec {
		return solver.Vec{X: rng.Float64(), Y: rng.Float64(), Z: rng.Float64()}
	}
	const n = 100
	for range 100 {
		a, b := solver.Segment{A: point(), B: point()}, solver.Segment{A: point(), B: point()}
		least := math.Inf(1)
		for i := range n + 1 {
			p := between(a.A, a.B, float64(i)/n, 0)
			for j := range n + 1 {
				least = math.Min(least, r3.Norm(r3.Sub(p, between(b.A, b.B, float64(j)/n, 0))))
			}
		}
		// Grid points lie within half a step of the true ones on either segment.
		slack := (r3.Norm(r3.Sub(a.A, a.B)) + r3.Norm(r3.Sub(b.A, b.B))) / (2 * n)
		if got := a.Distance(b); !(got <= least+1e-12 && got >= least-slack) {
			t.Fatalf("distance %g of %v and %v, grid gives %g", got, a, b, least)
		}
	}
}

// TestPlaneClearance counts a rod by its nearer end.
func TestPlaneClearance(t *testing.T) {
	p := solver.Plane{Point: solver.Vec{Z: 100}, Normal: solver.Vec{Z: -3}}
	near(t, "below", p.Clearance(solver.Segment{A: solver.Vec{Z: 40}, B: solver.Vec{X: 300, Z: 90}}), 10, 1e-12)
	near(t, "through", p.Clearance(solver.Segment{A: solver.Vec{Z: 40}, B: solver.Vec{X: 300, Z: 104}}), -4, 1e-12)
}

// rim is that of a left wheel at the origin, spin axis along y.
var rim = solver.Rim{Radius: 180, Offset: 60}

// TestRimClearance holds distances that are known by sight.
func TestRimClearance(t *testing.T) {
	out := solver.Vec{Y: 1}
	at := func(x, y, z float64) solver.Vec { return solver.Vec{X: x, Y: y, Z: z} }
	for _, tt := range []struct {
		name string
		s    solver.Segment
		want float64
	}{
		{"ball inside the rim", ball(at(100, -20, 0)), 80},
		{"ball at the axis", ball(at(0, -20, 0)), 180},
		{"ball inboard of the edge", ball(at(150, -100, 0)), 50},
		{"ball beside the tyre", ball(at(250, -75, 0)), 15},
		{"ball in the tyre", ball(at(190, -10, 0)), -10},
		{"rod out of the rim", solver.Segment{A: at(-120, -40, 0), B: at(-120, -400, 0)}, 60},
		{"rod square to the axis", solver.Segment{A: at(-200, -90, 0), B: at(200, -90, 0)}, 30},
		{"rod through the rim", solver.Segment{A: at(100, -20, 0), B: at(300, -20, 0)}, -40},
	} {
		near(t, tt.name, rim.Clearance(solver.Vec{}, out, tt.s), tt.want, 1e-4)
	}
}

// TestRimClearanceRandom compares the least over a rod with that over its points,
// for rods in front of a wheel and through it.
func TestRimClearanceRandom(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	point := func() solver.Vec {
		return solver.Vec{X: 500 * (rng.Float64() - 0.5), Y: -300 * rng.Float64(), Z: 500 * (rng.Float64() - 0.5)}
	}
	centre, spin := solver.Vec{X: 5, Y: -30, Z: 10}, r3.Unit(solver.Vec{X: 0.2, Y: 1, Z: -0.1})
	const n = 2000
	for range 100 {
		s := solver.Segment{A: point(), B: point()}
		least := math.Inf(1)
		for i := range n + 1 {
			least = math.Min(least, rim.Clearance(centre, spin, ball(between(s.A, s.B, float64(i)/n, 0))))
		}
		slack := r3.Norm(r3.Sub(s.A, s.B))/(2*n) + 1e-4
		if got := rim.Clearance(centre, spin, s); !(got <= least+1e-4 && got >= least-slack) {
			t.Fatalf("clearance %g of %v, points give %g", got, s, least)
		}
	}
}

// TestRimClearanceAllocates no memory.
func TestRimClearanceAllocates(t *testing.T) {
	s := solver.Segment{A: solver.Vec{X: -120, Y: -40}, B: solver.Vec{X: -100, Y: -400}}
	if n := testing.AllocsPerRun(10, func() { rim.Clearance(solver.Vec{}, solver.Vec{Y: 1}, s) }); n != 0 {
		t.Errorf("%g allocations, want 0", n)
	}
}
