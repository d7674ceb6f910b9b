package solver_test

import (
	"fmt"
	"testing"

	"toewright/solver"
)

const (
	cotSource = "Ackermann's rule, cot(outer) - cot(inner) = w/l, w the distance of the pivots and l the wheelbase (ISO 8855:2011, 7.1.9, " +
		"defines the geometry by all wheel axes meeting in one centre). Exact."
	trapezoidSource = "R.N. Jazar, *Vehicle Dynamics*, ch. 7, symmetric trapezoid (equation from memory, checked numerically; figures recomputed two ways): " +
		"w between the pivots, arms of length d to the rear and converging at B from straight. On an invented solid axle with upright kingpins."
)

var steeringReferences = []reference{
	{"Ackermann's rule", cotSource, cotRule},
	{"Steering trapezoid", trapezoidSource, trapezoid},
}

// turnedInner are the angles of the inner wheel in both tables, deg.
var turnedInner = [5]float64{5, 10, 20, 30, 40}

func cotRule(*testing.T) []claim {
	var cs []claim
	for _, tt := range []struct {
		w, l float64
		want [5]float64
	}{
		{1.2, 2.7, [5]float64{4.81375394, 9.28641775, 17.39529776, 24.67661685, 31.43214573}},
		{1.4, 2.6, [5]float64{4.77611574, 9.14821420, 16.92642184, 23.77009525, 30.02631504}},
		{1.536, 2.7, [5]float64{4.76406011, 9.10435597, 16.77988913, 23.49000890, 29.59546956}},
	} {
		for i, in := range turnedInner {
			cs = append(cs, claim{fmt.Sprintf("outer wheel, w/l = %g/%g, inner at %g deg", tt.w, tt.l, in), "deg",
				tt.want[i], solver.CotRule(solver.Deg(in), tt.w, tt.l).Degrees(), 1e-8})
		}
	}
	return cs
}

func trapezoid(t *testing.T) []claim {
	var cs []claim
	ws := solver.NewWorkspace()
	for _, tt := range []struct {
		w, d, b float64
		want    [5]float64
	}{
		{1.2, 0.20, 18, [5]float64{4.84616372, 9.39611303, 17.62480787, 24.62309800, 30.20316082}},
		{1.2, 0.15, 10, [5]float64{4.92057040, 9.68408534, 18.72689275, 27.04553129, 34.46095042}},
		{2.4, 0.40, 10, [5]float64{4.91936244, 9.67927049, 18.70674612, 26.99495881, 34.35448178}},
	} {
		x := assembled(t, trapezoidAxle(t, 1000*tt.w, 1000*tt.d, tt.b), nil)
		for i, in := range turnedInner {
			p, err := x.SteerFor(ws, solver.Left, solver.Deg(in), solver.Attitude{})
			if err != nil {
				t.Fatal(err)
			}
			cs = append(cs, claim{fmt.Sprintf("outer wheel, w %g m, d %g m, B %g deg, inner at %g deg", tt.w, tt.d, tt.b, in), "deg",
				tt.want[i], p.Turn().Outer.Degrees(), 1e-8})
		}
	}
	return cs
}
