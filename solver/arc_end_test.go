package solver

import "testing"

// TestSnapPolishes: a state that is off its path is brought onto it.
func TestSnapPolishes(t *testing.T) {
	x := testWishbone(t)
	var tr tracer
	tr.start(&cornerPath{c: x.corners[Left], gear: newGearPath(x.balls[Left], 0, 0), rate: 1}, &state{})
	if end := tr.advance(20); end != nil {
		t.Fatalf("the path ends at %g", end.s)
	}
	home := tr.q
	tr.q[0] += 1e-5
	tr.q[4] -= 1e-3
	tr.snap()
	tr.sys.residual(&tr.q, tr.s, &tr.f)
	if got := largest(&tr.f, tr.n); !(got <= residualLimit) {
		t.Errorf("a residual of %g mm is left, want at most %g", got, residualLimit)
	}
	for i := range tr.n {
		if !(abs(tr.q[i]-home[i]) <= 1e-9) {
			t.Errorf("unknown %d = %.12g, want %.12g as on the path", i, tr.q[i], home[i])
		}
	}
}

// TestArcTangent: the tangent is a unit vector that the Jacobian sends to zero,
// whatever the memory held before.
func TestArcTangent(t *testing.T) {
	x := testWishbone(t)
	var tr tracer
	tr.start(&cornerPath{c: x.corners[Left], gear: newGearPath(x.balls[Left], 0, 0), rate: 1}, &state{})
	n := tr.n
	for i := range tr.arc.rhs {
		tr.arc.rhs[i], tr.arc.border[i] = 5, 7
	}
	var out column
	if !tr.arcTangent(&column{}, nil, 1, &out) {
		t.Fatal("no tangent")
	}
	if size := product(&out, &out, n+1); !(abs(size-1) <= 1e-12) || !(out[n] > 0) {
		t.Errorf("tangent of squared length %g, by the parameter %g; want a unit one along it", size, out[n])
	}
	for i := range n {
		if got := product(&tr.arc.m[i], &out, n+1); !(abs(got) <= 1e-12) {
			t.Errorf("equation %d changes by %g along the tangent, want 0", i, got)
		}
	}
}
