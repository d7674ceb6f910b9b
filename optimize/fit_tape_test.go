package optimize

import (
	"math"
	"strings"
	"testing"

	"toewright/solver"
)

// tapeOf measures points of the invented car, and its mirror image's: every kind of
// measure, from marks that are not exact, both where each side is its own and where both
// are one.
func tapeOf(t testing.TB, a *solver.Assembler, alike bool) *GaugeFit {
	t.Helper()
	d := a.Design()
	p := &GaugeFit{Base: a, Taped: &Taped{Marks: []Mark{{"A", solver.Vec{X: 500, Y: 300}, 1}, {"B", solver.Vec{X: -400, Y: -900, Z: 20}, 0}}}}
	for _, q := range solver.Parameters(d) {
		if !q.Coordinate() {
			continue
		}
		sides := []solver.Selection{solver.LeftOnly, solver.RightOnly}
		if alike {
			sides = []solver.Selection{solver.BothSides}
		}
		for _, s := range sides {
			p.Priors = append(p.Priors, FitPrior{Parameter: q, Sides: s, SD: 100, Shared: true})
		}
	}
	point := func(i int, s solver.Side) TapePoint {
		return TapePoint{Mark: -1, Name: d.Kind.SidePoints[i].Name, Sides: only(s), Place: d.Points[s][i]}
	}
	add := func(axis int, from, to TapePoint, value float64) {
		p.Taped.Measures = append(p.Taped.Measures, TapeMeasure{From: from, To: to, Axis: axis, Value: value, SD: 0.5})
	}
	for i := range d.Kind.SidePoints {
		left, right := point(i, solver.Left), point(i, solver.Right)
		add(-1, TapePoint{Mark: 0}, left, 500)
		add(-1, right, TapePoint{Mark: 1}, 700)
		add(-1, left, right, 1200)
		add(i%3, TapePoint{}, left, 300)
		add((i+1)%3, TapePoint{}, right, -300)
	}
	add(2, TapePoint{}, TapePoint{Mark: 0}, 1)
	return p
}

// TestTapeDerivatives compares the derivatives of every kind of measure with differences.
func TestTapeDerivatives(t *testing.T) {
	for _, alike := range []bool{false, true} {
		p := tapeOf(t, inventedCar(t), alike)
		m := newGaugeModel(t.Context(), p, p.unknowns())
		x, scales := make([]float64, m.size.Variables), make([]float64, m.size.Variables)
		for k := range x {
			x[k], scales[k] = 30*math.Sin(float64(k)), 1
		}
		checkJacobian(t, m, x, scales)
	}
}

// TestTapeOfOneSide sees no difference between a car whose right side is measured as the
// mirror image of the left, and the left one measured in its place.
func TestTapeOfOneSide(t *testing.T) {
	a := inventedCar(t)
	d := a.Design()
	fit := func(side solver.Side) *FittedCar {
		p := tapeOf(t, a, true)
		p.Taped = &Taped{}
		for i := range d.Kind.SidePoints {
			at := d.Points[side][i]
			to := TapePoint{Mark: -1, Name: d.Kind.SidePoints[i].Name, Sides: only(side), Place: at}
			for axis, v := range []float64{at.X + 3, at.Y + map[solver.Side]float64{solver.Left: 7, solver.Right: -7}[side], at.Z - 5} {
				p.Taped.Measures = append(p.Taped.Measures, TapeMeasure{To: to, Axis: axis, Value: v, SD: 1})
			}
		}
		f, err := FitCar(t.Context(), p)
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	left, right := fit(solver.Left), fit(solver.Right)
	for k := range left.Values {
		if !near(left.Values[k], right.Values[k], 1e-9) || !near(math.Abs(left.Values[k]), []float64{3, 7, 5}[k%3], 0.01) {
			t.Errorf("%s = %g by the left side, %g by the right", left.Unknowns[k].Key(), left.Values[k], right.Values[k])
		}
	}
}

func TestTapeErrors(t *testing.T) {
	for _, tt := range []struct {
		want string
		make func(*Taped)
	}{
		{"measure 1 is", func(p *Taped) { p.Measures[0].SD = 0 }},
		{"measure 2 is", func(p *Taped) { p.Measures[1].Value = math.NaN() }},
		{"mark A has", func(p *Taped) { p.Marks[0].SD = math.NaN() }},
	} {
		p := tapeOf(t, inventedCar(t), false)
		tt.make(p.Taped)
		if _, err := FitCar(t.Context(), p); err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("error %v, want one with %q", err, tt.want)
		}
	}
}
