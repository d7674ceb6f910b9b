package solver_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"toewright/solver"
)

func diagnosed(t *testing.T, x *solver.Axle, s solver.Side, window, step float64) *solver.Diagnosis {
	t.Helper()
	travels, err := solver.Grid(window, window, step)
	if err != nil {
		t.Fatal(err)
	}
	d, err := x.Diagnose(solver.NewWorkspace(), s, travels, nil)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// TestDiagnosePlanar knows why: a planar car's inner ball is 5 mm too high, or its
// rod 10 % too short. The cause is named, and undone to the little that the ideal
// rod itself leaves.
func TestDiagnosePlanar(t *testing.T) {
	for _, tt := range []struct {
		name          string
		share, raised float64
		part          func(*solver.CurveShape) solver.ShapePart
		remedy        int
		move          int
		want, within  float64 // of that move, mm
	}{
		{"inner ball high", 1, 5, func(c *solver.CurveShape) solver.ShapePart { return c.Slope }, 1, 0, -5, 0.1},
		{"rod short", 0.9, 0, func(c *solver.CurveShape) solver.ShapePart { return c.Curvature }, 4, 1, -35.96, 0.3},
	} {
		x := assembled(t, planarWishbone(t, between(yz(690, 290), wishboneIdeal, tt.share, tt.raised)), nil)
		d := diagnosed(t, x, solver.Left, 30, 5)
		if got := tt.part(&d.Shape).Share; !(got > 0.99) {
			t.Errorf("%s: share %g, want above 0.99: %+v", tt.name, got, d.Shape)
		}
		r := d.Remedies[tt.remedy]
		near(t, tt.name+": move", r.Changes[tt.move].Value, tt.want, tt.within)
		if !(r.RMS < d.Shape.RMS/20) {
			t.Errorf("%s: leaves %g of %g", tt.name, r.RMS, d.Shape.RMS)
		}
	}
}

// TestDiagnoseTextbook moves the inner ball of Rill's example to the direct optimum
// of the toe over -50 to 50 mm by 10: y 377.983, z -39.748 (recomputed).
func TestDiagnoseTextbook(t *testing.T) {
	x := assembled(t, rillDesign(t), nil)
	for _, s := range solver.Sides {
		d := diagnosed(t, x, s, 50, 10)
		r := d.Remedies[4]
		near(t, "height", -38+r.Changes[0].Value, -39.748, 1e-3)
		near(t, "lateral", 380+r.Changes[1].Value, 377.983, 1e-3)
		near(t, "ideal inner, height", d.Inner.At.Z, -39.748, 0.01)
		near(t, "ideal inner, lateral", math.Abs(d.Inner.At.Y), 377.983, 0.01)
	}
}

// TestRemediesAreBest: no remedy gets better by moving a little farther or less, and
// what it says remains does remain.
func TestRemediesAreBest(t *testing.T) {
	for _, file := range []string{"dw01_saloon_rear_steer.json", "st03_high_tie_rod_on_strut.json", "ml01_front_virtual_axis.json", "sa01_cross_steer_right_arm.json"} {
		t.Run(file, func(t *testing.T) {
			c := loadCase(t, "../testdata/cases/"+file)
			x := c.Study.candidate(t, c.Study.design(t), "base")
			d := diagnosed(t, x, solver.Left, 40, 10)
			if len(d.Remedies) != 5 {
				t.Fatalf("%d remedies, want 5", len(d.Remedies))
			}
			for i, r := range d.Remedies {
				got := rmsWith(t, x, d, r.Changes)
				near(t, "RMS", got, float64(r.RMS), 1e-12)
				if !(r.RMS <= d.Shape.RMS) {
					t.Errorf("remedy %d leaves %g of %g", i, r.RMS, d.Shape.RMS)
				}
				for k := range r.Changes {
					p := &r.Changes[k].Parameter
					for _, by := range []float64{-0.5, 0.5} {
						cs := slices.Clone(r.Changes)
						cs[k].Value += by
						if cs[k].Value < p.Min || cs[k].Value > p.Max {
							continue
						}
						if more := rmsWith(t, x, d, cs); !(more > got) {
							t.Errorf("remedy %d: %s by %g more leaves %g, less than %g", i, p.Key, by, more, got)
						}
					}
				}
			}
		})
	}
}

// rmsWith returns the RMS toe error of the left wheel with changes.
func rmsWith(t *testing.T, x *solver.Axle, d *solver.Diagnosis, cs []solver.Change) float64 {
	t.Helper()
	y, err := solver.Assemble(x.Design(), cs, solver.HoldAll)
	if err != nil {
		t.Fatal(err)
	}
	f, _ := solver.NewFigures(swept(t, y, solver.SweepInput{Travels: d.Travels, Sides: solver.LeftOnly})[solver.Left].Positions, nil)
	return float64(f.RMS)
}

// TestRemedyAtItsBound: a remedy that stops where its parameter usually does says so,
// and no other does.
func TestRemedyAtItsBound(t *testing.T) {
	x := assembled(t, planarWishbone(t, between(yz(690, 290), wishboneIdeal, 1, 40)), nil)
	bound := 0
	for _, r := range diagnosed(t, x, solver.Left, 30, 5).Remedies {
		want := false
		for _, c := range r.Changes {
			want = want || c.Value == c.Parameter.Min || c.Value == c.Parameter.Max
		}
		if r.Bound != want {
			t.Errorf("remedy %+v: bound %t, want %t", r.Changes, r.Bound, want)
		}
		if want {
			bound++
		}
	}
	if bound == 0 || bound == 5 {
		t.Errorf("%d of 5 remedies of a ball 40 mm too high are at a bound, want some", bound)
	}
}

// TestDiagnoseNeedsHome refuses travels without the static height.
func TestDiagnoseNeedsHome(t *testing.T) {
	x := assembled(t, rillDesign(t), nil)
	_, err := x.Diagnose(solver.NewWorkspace(), solver.Left, []float64{5, 10}, nil)
	if err == nil || !strings.Contains(err.Error(), "travel") {
		t.Errorf("error %v, want one that names travel", err)
	}
}

// metric words lengths in mm and angles in degrees.
var metric = solver.Wording{
	Length: func(mm float64) string { return fmt.Sprintf("%.1f mm", mm) },
	Small:  func(mm float64) string { return fmt.Sprintf("%.2g mm", mm) },
	Travel: func(mm float64) string { return fmt.Sprintf("%.0f mm", mm) },
	Toe:    func(a solver.Angle) string { return fmt.Sprintf("%.3f deg", a.Degrees()) },
}

// TestDiagnosisLines reads the diagnosis of Rill's example with its inner ball 8 mm
// too high.
func TestDiagnosisLines(t *testing.T) {
	x := assembled(t, rillDesign(t), map[string]float64{"tieRodInnerHeight": 8})
	lines := diagnosed(t, x, solver.Right, 50, 10).Lines(metric)
	want := []string{
		"right side: toe error 0.405 deg RMS over 50 mm of bump and 50 mm of droop",
		"ball height: slope at ride height of 0.404 deg RMS, 99 % of the mean square; outer ball 9.5 mm up (rod 1.6 mm shorter) leaves 0.011 deg RMS; or inner ball 10.1 mm down (rod 1.7 mm shorter) leaves 0.005 deg RMS",
		"rod length: curvature of 0.031 deg RMS, 1 % of the mean square",
		"height and length together: outer ball 10.3 mm up and inner ball 4.5 mm outboard (rod 6.2 mm shorter) leaves 0.000 deg RMS; or inner ball 9.7 mm down and 2.0 mm inboard (rod 0.3 mm longer) leaves 0.000 deg RMS",
		"ideal inner ball: 9.7 mm below and 2.0 mm inboard of where it is, on a rod 316.0 mm long; the ball's path then strays 0.0012 mm",
	}
	if !slices.Equal(lines, want) {
		t.Errorf("lines:\n%s\nwant:\n%s", strings.Join(lines, "\n"), strings.Join(want, "\n"))
	}
}

// TestDiagnosisLeavesOut checks that a ball that stays where it is is not told to
// move, and that remedies which come to the same are told once.
func TestDiagnosisLeavesOut(t *testing.T) {
	d := rillDesign(t)
	outward := change(t, d, "tieRodInnerLateral", 5)
	remedy := func(key string, mm float64) solver.Remedy {
		return solver.Remedy{Changes: []solver.Change{change(t, d, key, mm), outward}}
	}
	tests := []struct {
		name          string
		first, second float64 // of the outer and of the inner ball's height, mm
		want          string
	}{
		{"both move", 1, -2, "outer ball 1.0 mm up and inner ball 5.0 mm outboard leaves 0.000 deg RMS; or inner ball 2.0 mm down and 5.0 mm outboard leaves 0.000 deg RMS"},
		{"neither height", 0.01, -0.01, "inner ball 5.0 mm outboard leaves 0.000 deg RMS"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			x := solver.Diagnosis{Travels: []float64{-10, 0, 10}, Remedies: []solver.Remedy{
				{}, {}, {}, remedy("tieRodOuterHeight", tt.first), remedy("tieRodInnerHeight", tt.second),
			}}
			x.Shape.RMS = solver.Deg(0.1)
			lines := x.Lines(metric)
			if got, want := lines[len(lines)-1], "height and length together: "+tt.want; got != want {
				t.Errorf("last line %q, want %q", got, want)
			}
		})
	}
}
