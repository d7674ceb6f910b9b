package engine

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/study"
)

// faced returns the invented car with a face that leans, its second bolt the lower one, and
// a part on.
func faced(t *testing.T) *study.Document {
	d := document(t, armed)
	d.Suspension.Left.ArmFace = &study.ArmFace{
		Point: study.Vec3{-30, 690, 240}, Normal: study.Vec3{-2, 0.1, 0.2},
		Bolts: []study.Vec3{{-31, 690, 260}, {-30, 692, 220}},
	}
	d.Candidates = []study.Candidate{{Name: "arm", Changes: study.Changes{"tieRodOuterHeight": -8.17, "steeringArmLength": 5.03, "steeringArmOffset@right": 2}}}
	return d
}

// TestPartSizes: the three sizes from face and lowest bolt, or from the original ball, place
// the ball; what is made lies on the step.
func TestPartSizes(t *testing.T) {
	bare := faced(t)
	bare.Suspension.Left.ArmFace = nil
	for name, d := range map[string]*study.Document{"face and bolts": faced(t), "neither": bare} {
		const step = 0.25
		got, err := Arm(t.Context(), d, ArmOptions{Candidate: "arm", Step: new(step)})
		if err != nil {
			t.Fatal(err)
		}
		for i := range got.Sides {
			p := &got.Sides[i].Part
			at, was := r3.Vec{}, r3.Vec{}
			for k := range p.Sizes {
				z := &p.Sizes[k]
				start := r3.Dot(vecOf(z.From), vecOf(z.Along))
				at = r3.Add(at, r3.Scale(start+z.Exact, vecOf(z.Along)))
				was = r3.Add(was, r3.Scale(start+z.Was, vecOf(z.Along)))
				near(t, name+" on the step", z.Make/step, math.Round(z.Make/step), 1e-9)
				near(t, name+" next to it", math.Abs(z.Off()), 0, step/2+1e-12)
			}
			near(t, name+" ball", r3.Norm(r3.Sub(at, vecOf(p.Hole))), 0, 1e-9)
			near(t, name+" original ball", r3.Norm(r3.Sub(was, vecOf(p.Original))), 0, 1e-9)
			if f := p.Face; f != nil && p.Sizes[1].From[2] != 220 {
				t.Errorf("%s: sizes from %v, want the lower bolt", name, p.Sizes[1].From)
			}
		}
	}
}

// TestRounding: the toe of a car made on a step is that of a car whose file has its balls
// there.
func TestRounding(t *testing.T) {
	d := faced(t)
	got, err := Arm(t.Context(), d, ArmOptions{Candidate: "arm", Step: new(1.0)})
	if err != nil {
		t.Fatal(err)
	}
	there := d.Clone()
	there.Candidates = nil
	right := there.Suspension.Left.Mirrored()
	there.Suspension.Right = &right
	for i, corner := range []*study.Corner{&there.Suspension.Left, there.Suspension.Right} {
		ball := study.Vec3{}
		for _, z := range got.Sides[i].Part.Sizes {
			start := r3.Dot(vecOf(z.From), vecOf(z.Along))
			for k := range ball {
				ball[k] += (start + z.Make) * z.Along[k]
			}
		}
		corner.Points["tieRodOuter"] = ball
	}
	want, err := Compare(t.Context(), there, CompareOptions{})
	if err != nil {
		t.Fatal(err)
	}
	for i := range got.Sides {
		a := &got.Sides[i]
		near(t, a.Side+" made", float64(a.PeakMade), float64(want.Cars[i].Peak), 1e-9)
		if math.Abs(float64(a.PeakMade-a.Peak)) < 1e-6 {
			t.Errorf("%s: a step of 1 mm costs nothing: %v, %v", a.Side, a.Peak, a.PeakMade)
		}
	}
}

// TestPartZones: what the study's tolerances assume of the ball is what is asked for.
func TestPartZones(t *testing.T) {
	d := faced(t)
	d.Tolerances = []study.Tolerance{
		{Parameter: "steeringArmLength", PlusMinus: 0.3}, {Parameter: "tieRodOuter.y", SD: 0.05},
		{Parameter: "tieRodOuterHeight@left", PlusMinus: 0.2}, {Parameter: "tieRodOuter.z", PlusMinus: 0.25},
		{Parameter: "caster", PlusMinus: 0.5},
	}
	sides := armOf(t, d, "arm").Sides
	for i, want := range [][2]float64{{0.3, 0.4}, {0.3, 0.5}} {
		z := sides[i].Part.Zones
		near(t, "square to the stud", z[0].Width, want[0], 1e-12)
		near(t, "along the stud", z[1].Width, want[1], 1e-12)
		if len(z[0].Of) != 2 || len(z[1].Of) != 2-i {
			t.Errorf("%s: zones of %v and %v", sides[i].Side, z[0].Of, z[1].Of)
		}
	}
}

func TestArmRefusesNoStep(t *testing.T) {
	_, err := Arm(t.Context(), faced(t), ArmOptions{Step: new(0.0)})
	wantError(t, err, Wrong, "step", "more than 0")
}
