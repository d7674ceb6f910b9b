package report

import (
	"math"
	"testing"

	"toewright/internal/engine"
	"toewright/internal/plot"
)

// square is an invented arm that points straight back, its hole moved 12 mm down and
// 5 mm inboard.
var square = engine.ArmSide{
	Side: "left", Car: [3]float64{0, -5, -12}, AlongStud: -12, AcrossStud: 5,
	Arm: engine.Lengths{Before: 130, After: 130.1},
	Place: engine.Places{
		Hole: [3]float64{-130, 700, 240}, Foot: [3]float64{0, 700, 240}, Inner: [3]float64{-130, 300, 240},
		Axis: [3]float64{0, 0, 1}, Stud: [3]float64{0, 0, 1},
	},
}

// figures returns the numbers on a drawing.
func figures(p plot.Picture) map[string]int {
	list := map[string]int{}
	for _, m := range p.Marks {
		if m.Class == "figure" {
			list[m.Text]++
		}
	}
	return list
}

func TestArmPictureDimensions(t *testing.T) {
	n := numbersOf(car(t, "double-wishbone-rack"))
	got := figures(armPicture(n, &square))
	want := map[string]int{"12.00": 1, "5.00": 1, "130.10": 1, "(130.00)": 1}
	if len(got) != len(want) {
		t.Errorf("figures %v, want %v", got, want)
	}
	for text, count := range want {
		if got[text] != count {
			t.Errorf("figure %s stands %d times, want %d", text, got[text], count)
		}
	}
}

func TestArmPictureOfALengthAlone(t *testing.T) {
	a := square
	a.Car, a.Arm = [3]float64{-0.2, 0, 0}, engine.Lengths{Before: 130, After: 130}
	if got := figures(armPicture(numbersOf(car(t, "double-wishbone-rack")), &a)); len(got) != 1 || got["130.00"] != 1 {
		t.Errorf("figures %v, want the length alone", got)
	}
}

// TestArmInCarAxes: a right arm's outboard is to the right, and inches become mm.
func TestArmInCarAxes(t *testing.T) {
	a := square
	a.Side = "right"
	a.Place.Hole[1], a.Place.Foot[1], a.Place.Inner[1] = -700, -700, -300
	n := numbersOf(car(t, "double-wishbone-rack"))
	for side, arm := range map[float64]arm{1: newArm(n, &square), -1: newArm(n, &a)} {
		if want := (plot.Vec{X: -130, Y: 695 * side, Z: 228}); arm.now != want {
			t.Errorf("hole at %v, want %v", arm.now, want)
		}
		if want := (plot.Vec{Y: -side}); arm.rod != want {
			t.Errorf("tie rod towards %v, want %v", arm.rod, want)
		}
		if want := (plot.Vec{Y: 700 * side, Z: 228}); arm.nowFoot != want {
			t.Errorf("foot at %v, want %v", arm.nowFoot, want)
		}
	}
	n.file = "in"
	if got := newArm(n, &square).was.X; math.Abs(got+130*25.4) > 1e-9 {
		t.Errorf("hole of a study in inches at %g mm", got)
	}
}

// TestArmPictureStaysOnThePaper draws every invented car's arms within the picture.
func TestArmPictureStaysOnThePaper(t *testing.T) {
	for _, d := range []Options{{Candidate: "Spacers 12 mm"}, {Candidate: "Spacers 6 mm"}} {
		s := gathered(t, car(t, "double-wishbone-rack"), d)
		for i := range s.Arm.Sides {
			p := armPicture(numbersOf(s.Study), &s.Arm.Sides[i])
			paper := plot.Box(0, 0, p.Width, p.Height)
			for _, m := range p.Marks {
				if m.Text != "" && !paper.Contains(m.Anchor.At) {
					t.Errorf("%s: text %q stands at %v, off the paper", d.Candidate, m.Text, m.Anchor.At)
				}
			}
		}
	}
}
