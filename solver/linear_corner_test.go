package solver

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// randomRows returns five links of unit force at arms of some 300 mm.
func randomRows(rng *rand.Rand) *rows {
	vec := func() Vec { return Vec{X: rng.NormFloat64(), Y: rng.NormFloat64(), Z: rng.NormFloat64()} }
	var w rows
	for i := range w {
		w[i] = pull(r3.Unit(vec()), r3.Scale(300, vec()))
	}
	return &w
}

// matrix returns the rows over ω and v.
func (w *rows) matrix() *matrix {
	var m matrix
	for i, r := range w {
		m[i] = column{r.moment.X, r.moment.Y, r.moment.Z, r.force.X, r.force.Y}
	}
	return &m
}

// TestSplitAgreesWithFactors holds the elimination by a pair of links against the
// general factorisation, with every pair that is fit.
func TestSplitAgreesWithFactors(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 7))
	for range 200 {
		w := randomRows(rng)
		var f factors
		if !f.factor(w.matrix(), cornerUnknowns) {
			t.Fatal("random rows are singular")
		}
		for i := range w {
			for j := i + 1; j < len(w); j++ {
				if math.Abs(plan(&w[i], &w[j])) > minPair {
					checkSplit(t, w, newPair(i, j), &f, rng)
				}
			}
		}
	}
}

func checkSplit(t *testing.T, w *rows, by rowPair, f *factors, rng *rand.Rand) {
	t.Helper()
	var s split
	if det := s.factor(w, by); !(math.Abs(det-f.det) <= 1e-9*math.Abs(f.det)) {
		t.Fatalf("pair %d, %d: determinant %g, want %g", by.first, by.second, det, f.det)
	}
	var b [cornerUnknowns]float64
	for i := range b {
		b[i] = rng.NormFloat64()
	}
	omega, x, y := s.solve(w, &b)
	for i := range w {
		got := r3.Dot(w[i].moment, omega) + w[i].force.X*x + w[i].force.Y*y
		if !(math.Abs(got-b[i]) <= 1e-9) {
			t.Errorf("pair %d, %d: row %d answers %.12g, want %.12g", by.first, by.second, i, got, b[i])
		}
	}
	moment := Vec{X: b[0], Y: b[1], Z: b[2]}
	var sum Vec
	var level float64
	for i, l := range s.loads(w, moment) {
		sum = axpy(l, w[i].moment, sum)
		level += l * (w[i].force.X + 0.5*w[i].force.Y)
	}
	if !(r3.Norm(r3.Sub(sum, moment)) <= 1e-9) || !(math.Abs(level) <= 1e-9) {
		t.Errorf("pair %d, %d: loads give the moment %v and the level force %g, want %v and 0", by.first, by.second, sum, level, moment)
	}
}

func TestSplitRefuses(t *testing.T) {
	level := func(x, y float64) wrench { return pull(Vec{X: x, Y: y}, Vec{Z: 100}) }
	for _, tt := range []struct {
		name string
		w    rows
	}{
		{"pair in line", rows{level(0, 1), level(0.001, 1), {moment: Vec{X: 1}}, {moment: Vec{Y: 1}}, {moment: Vec{Z: 1}}}},
		{"singular", rows{level(0, 1), level(1, 0), {moment: Vec{X: 1}}, {moment: Vec{X: 1}}, {moment: Vec{Z: 1}}}},
		{"no number", rows{level(0, 1), level(1, 0), {moment: Vec{X: math.NaN()}}, {moment: Vec{Y: 1}}, {moment: Vec{Z: 1}}}},
	} {
		var s split
		if det := s.factor(&tt.w, newPair(0, 1)); det != 0 {
			t.Errorf("%s: factored with determinant %g, want 0", tt.name, det)
		}
	}
}

func TestBestPair(t *testing.T) {
	w := rows{{force: Vec{Y: 1}}, {force: Vec{X: 0.1, Y: 1}}, {force: Vec{Z: 1}}, {force: Vec{X: 1, Y: 0.2}}, {force: Vec{X: 0.5, Y: 0.5}}}
	if got := w.bestPair(); got != newPair(0, 3) {
		t.Errorf("best pair %d, %d, want 0, 3", got.first, got.second)
	}
}
