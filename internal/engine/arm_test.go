package engine

import (
	"math"
	"testing"

	"toewright/internal/study"
)

// armed is what the invented car needs for all that is said of its arms: a face
// that looks straight back, with its bolts one above the other.
const armed = `"tieRod": {"threadPitch": 1.5, "engagement": 20},`

func armOf(t *testing.T, d *study.Document, name string) *ArmResult {
	t.Helper()
	got, err := Arm(t.Context(), d, ArmOptions{Candidate: name})
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func TestArm(t *testing.T) {
	d := document(t, armed)
	d.Suspension.Left.ArmFace = &study.ArmFace{
		Point: study.Vec3{-30, 690, 240}, Normal: study.Vec3{-2, 0, 0},
		Bolts: []study.Vec3{{-30, 690, 220}, {-30, 690, 260}},
	}
	d.Candidates = []study.Candidate{{Name: "arm", Changes: study.Changes{"tieRodOuterHeight": -8, "steeringArmLength": 5}}}
	got := armOf(t, d, "arm")
	if got.Candidate != "arm" || got.Units != study.Millimetre || len(got.Sides) != 2 {
		t.Fatalf("arm of %q in %s with %d sides", got.Candidate, got.Units, len(got.Sides))
	}
	for i, side := range []string{"left", "right"} {
		a := &got.Sides[i]
		if a.Side != side || a.Face == nil || a.DragLink != nil {
			t.Fatalf("side %d = %+v, want %s with a face and no drag link", i, a, side)
		}
		near(t, side+" up", a.Car[2], -8, 1e-9)
		near(t, side+" along the stud", a.AlongStud, -8, 1e-9)
		near(t, side+" across the stud", a.AcrossStud, 5, 1e-9)
		near(t, side+" along the normal, which looks back", a.Face.By[0], -a.Car[0], 1e-9)
		near(t, side+" along the bolts, which point up", a.Face.By[1], a.Car[2], 1e-9)
		near(t, side+" across them, which is outboard", a.Face.By[2], a.Car[1], 1e-9)
		if want := [3][3]float64{{-1, 0, 0}, {0, 0, 1}, {0, 1, 0}}; a.Face.Axes != want {
			t.Errorf("%s axes of the face = %v, want %v", side, a.Face.Axes, want)
		}
		near(t, side+" arm", a.Arm.After, longArm(a), 1e-9)
		grown := a.TieRod.After - a.TieRod.Before
		near(t, side+" turns", float64(a.Turns), grown/1.5, 1e-12)
		near(t, side+" thread", float64(a.Thread), 20-grown, 1e-12)
	}
}

// longArm returns the length of an arm by its place: from the steering axis at the
// new hole's height.
func longArm(a *ArmSide) float64 {
	p := &a.Place
	t := a.Car[2] / p.Axis[2]
	outboard := a.Car[1]
	if a.Side == "right" {
		outboard = -outboard
	}
	return math.Hypot(p.Hole[0]+a.Car[0]-p.Foot[0]-t*p.Axis[0], p.Hole[1]+outboard-p.Foot[1]-t*p.Axis[1])
}

// TestArmOfCorrectedCar: a hole that was measured elsewhere is where the original
// is, so that only what a candidate makes is reported.
func TestArmOfCorrectedCar(t *testing.T) {
	d := document(t, "")
	d.Candidates = []study.Candidate{{Name: "arm", Changes: study.Changes{"tieRodOuter.z": 3, "tieRodOuterHeight": -8}}}
	a := &armOf(t, d, "arm").Sides[0]
	near(t, "up", a.Car[2], -8, 1e-9)
	near(t, "original hole", a.Place.Hole[2], 243, 1e-9)
	if a.Turns.Valid() || a.Thread.Valid() || a.Face != nil {
		t.Errorf("turns %v, thread %v, face %v without a rod or a face in the study", a.Turns, a.Thread, a.Face)
	}
}

// TestArmOfEveryKind places the arm of each invented car: foot on the steering axis
// at the ball's height, as far away as the arm is long, and no change of the base.
func TestArmOfEveryKind(t *testing.T) {
	for _, template := range study.Templates() {
		d := template.Document()
		for _, a := range armOf(t, d, "").Sides {
			who := template.Key + " " + a.Side
			p := &a.Place
			near(t, who+" foot's height", p.Foot[2], p.Hole[2], 1e-9)
			near(t, who+" arm", math.Hypot(p.Hole[0]-p.Foot[0], p.Hole[1]-p.Foot[1]), a.Arm.Before, 1e-9)
			rod := math.Hypot(math.Hypot(p.Hole[0]-p.Inner[0], p.Hole[1]-p.Inner[1]), p.Hole[2]-p.Inner[2])
			near(t, who+" tie rod", rod, a.TieRod.Before, 1e-9)
			near(t, who+" change", a.AlongStud+a.AcrossStud+a.Arm.After-a.Arm.Before, 0, 0)
			if (a.DragLink != nil) != (d.Suspension.Type == "solid-axle") {
				t.Errorf("%s: drag link %v", who, a.DragLink)
			}
		}
	}
}

func TestArmRefuses(t *testing.T) {
	_, err := Arm(t.Context(), document(t, ""), ArmOptions{Candidate: "none"})
	wantError(t, err, Wrong, "candidate", "none")
	d := study.Template{Key: "double-wishbone-rack"}.Document()
	d.Suspension.Left.ArmFace.Normal = study.Vec3{}
	_, err = Arm(t.Context(), d, ArmOptions{})
	wantError(t, err, Wrong, "suspension.left.armFace.normal", "has no direction")
}
