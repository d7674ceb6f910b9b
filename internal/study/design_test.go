package study

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"toewright/solver"
)

func TestDesign(t *testing.T) {
	d := decode(t, []byte(inchText))
	d.Suspension.Left.StudAxis = &Vec3{0, 0.1, 1}
	d.Suspension.Left.Toe, d.Suspension.Left.Camber = 0.5, -1
	d.Suspension.Adjuster = "lower-legs"
	d.Vehicle.Wheelbase = 100
	got, err := d.Design()
	if err != nil {
		t.Fatal(err)
	}
	// The lower ball joint of inchText in mm, exactly: 0.2, 27.2 and 7.4 in.
	const ball = 2 // its place among the points of a double wishbone
	if want := (solver.Vec{X: 5.08, Y: 690.88, Z: 187.96}); got.Points[solver.Left][ball] != want {
		t.Errorf("left ball joint = %v, want %v", got.Points[solver.Left][ball], want)
	}
	if want := (solver.Vec{X: 5.08, Y: -690.88, Z: 187.96}); got.Points[solver.Right][ball] != want {
		t.Errorf("right ball joint = %v, want %v", got.Points[solver.Right][ball], want)
	}
	if want := [2]solver.Vec{{Y: 0.1, Z: 1}, {Y: -0.1, Z: 1}}; got.StudAxis != want {
		t.Errorf("stud axes = %v, want %v: a direction has no unit", got.StudAxis, want)
	}
	for s := range got.Toe {
		if got.Toe[s] != solver.Deg(0.5) || got.Camber[s] != solver.Deg(-1) {
			t.Errorf("side %d: toe %v, camber %v, want 0.5 and -1 degrees", s, got.Toe[s], got.Camber[s])
		}
	}
	if got.Wheelbase != 2540 || got.TyreRadius != d.Units.Millimetres(12.2) || got.Adjuster != "lower-legs" {
		t.Errorf("wheelbase %v, tyre radius %v, adjuster %q, want 2540, the wheel centre's height and lower-legs", got.Wheelbase, got.TyreRadius, got.Adjuster)
	}
}

func TestDesignGear(t *testing.T) {
	tests := []struct {
		name, steering string
		want           solver.Gear
	}{
		{"rack", `{"type": "rack"}`, solver.Gear{Kind: solver.Rack, Axis: solver.Vec{Y: 1}}},
		{"tilted rack", `{"type": "rack", "axis": [0, 2, 0.5]}`, solver.Gear{Kind: solver.Rack, Axis: solver.Vec{Y: 2, Z: 0.5}}},
		{"none", `{"type": "none"}`, solver.Gear{}},
		{
			"centre link",
			`{"type": "centre-link", "pitmanPivot": [1, 10, 12], "pitmanAxis": [0, 0, 1], "pitmanBall": [-5, 10, 11],
			"idlerPivot": [1, -10, 12], "idlerAxis": [0, 0.1, 1], "idlerBall": [-5, -10, 11]}`,
			solver.Gear{
				Kind: solver.CentreLink, PitmanAxis: solver.Vec{Z: 1}, IdlerAxis: solver.Vec{Y: 0.1, Z: 1}, HasIdler: true,
				Points: [4]solver.Vec{{X: 25.4, Y: 254, Z: 304.8}, {X: -127, Y: 254, Z: 279.4}, {X: 25.4, Y: -254, Z: 304.8}, {X: -127, Y: -254, Z: 279.4}},
			},
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d := decode(t, []byte(strings.Replace(inchText, `{"type": "rack"}`, tt.steering, 1)))
			got, err := d.Design()
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(tt.want, got.Gear); diff != "" {
				t.Errorf("gear (-want +got):\n%s", diff)
			}
		})
	}
}

func TestDesignSolidAxle(t *testing.T) {
	d := templateDoc(t, "solid-axle-pitman")
	got, err := d.Design()
	if err != nil {
		t.Fatal(err)
	}
	if got.DragSide != solver.Right || got.Gear.HasIdler {
		t.Errorf("drag side %v, idler %t, want right and none", got.DragSide, got.Gear.HasIdler)
	}
	if want := (solver.Vec{X: -900, Y: 370, Z: 430}); got.Common[0] != want {
		t.Errorf("first link starts at %v, want %v", got.Common[0], want)
	}
	if want := (solver.Vec{X: 12, Y: -634, Z: 306}); got.Points[solver.Right][1] != want {
		t.Errorf("right kingpin ends at %v, want %v", got.Points[solver.Right][1], want)
	}
}

func TestDesignErrors(t *testing.T) {
	tests := []struct {
		name string
		edit func(*Document)
		want string
	}{
		{"unknown type", func(d *Document) { d.Suspension.Type = "unicycle" }, `suspension type "unicycle" is unknown`},
		{"missing point", func(d *Document) { delete(d.Suspension.Left.Points, "tieRodInner") }, "left.tieRodInner: missing"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d := decode(t, []byte(inchText))
			tt.edit(d)
			if _, err := d.Design(); err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("Design() = %v, want %s", err, tt.want)
			}
		})
	}
}

// TestDesignsCheck checks that every study can be assembled.
func TestDesignsCheck(t *testing.T) {
	for name, data := range studyFiles(t) {
		design, err := decode(t, data).Design()
		if err == nil {
			err = design.Check()
		}
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestUnitsDoNotMatter checks that a car in inches sweeps like the same car in mm.
func TestUnitsDoNotMatter(t *testing.T) {
	inches := decode(t, []byte(inchText))
	metric := inches.Clone()
	metric.Units = Millimetre
	for name, v := range metric.Suspension.Left.Points {
		for i := range v {
			v[i] = Inch.Millimetres(v[i])
		}
		metric.Suspension.Left.Points[name] = v
	}
	metric.Travel = &Travel{Bump: 50.8, Droop: 50.8, Step: 6.35}
	change := func(d *Document, mm float64) Candidate {
		return Candidate{Changes: Changes{"tieRodOuterHeight": d.Units.FromMillimetres(mm), "caster": 5}}
	}
	a, b := sweep(t, inches, change(inches, 7)), sweep(t, metric, change(metric, 7))
	const tolerance = 1e-12 // rad: the two differ by rounding of the changes alone
	for i, p := range a[0].Positions {
		if q := b[0].Positions[i]; !(math.Abs(float64(p.Toe-q.Toe)) <= tolerance) {
			t.Errorf("travel %g: toe %v and %v, want the same", p.Travel, p.Toe, q.Toe)
		}
	}
}
