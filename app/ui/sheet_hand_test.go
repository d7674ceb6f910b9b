package ui

import (
	"math"
	"testing"

	"toewright/app/demo"
	"toewright/app/model"
	"toewright/app/scene"
	"toewright/internal/plot"
	"toewright/internal/study"
	"toewright/solver"
)

// openDrawing returns a drawing of the demo, painted once, with the base car selected.
func openDrawing(t testing.TB) *drawing {
	t.Helper()
	d := newDrawing(model.NewDesk(demo.Document()))
	d.desk.Select(0)
	d.size = scene.Size{Width: 960, Height: 680}
	d.painter = newPainter(&countingCanvas{})
	d.frame(0)
	return d
}

const (
	outerBall = "tie rod, outer ball"
	leftWheel = "left wheel travel"
)

func TestDragOfTheBaseCarMakesACandidate(t *testing.T) {
	d := openDrawing(t)
	cars := len(d.desk.Session.Cars().List)
	told := 0
	d.edited = func() { told++ }
	at := place(t, d, outerBall)
	if !d.down(at) {
		t.Fatal("the pointer takes hold of nothing")
	}
	scale := pixelsPerMM(d, outerBall)
	for _, mm := range []float64{2, 5.4} {
		d.move(at.Add(plot.Point{Y: mm * scale}), false)
		d.frame(1)
	}
	d.up()
	if got := d.desk.View.Car; got != cars {
		t.Fatalf("selected car = %d, want the new one, %d", got, cars)
	}
	if c := d.desk.Selected(); c.Name != "candidate" || c.Changes["tieRodOuterHeight"] != -5 {
		t.Errorf("selected %q with %v, want a candidate with the ball 5 mm lower, in whole spacers", c.Name, c.Changes)
	}
	if told != 1 {
		t.Errorf("the page was told %d times of a drag, want once, at its end", told)
	}
	d.desk.Session.Undo()
	d.desk.Session.Undo()
	if got := len(d.desk.Session.Cars().List); got != cars {
		t.Errorf("cars after two steps back = %d, want %d: a drag is one step, the candidate another", got, cars)
	}
}

// pixelsPerMM returns how far the pointer goes for a millimetre of a ball's height.
func pixelsPerMM(d *drawing, label string) float64 {
	for _, h := range d.stage.Handles() {
		if h.Label == label {
			return math.Max(h.Moves[0].Step.Length(), leastGain)
		}
	}
	return math.NaN()
}

func TestFreeDragLeavesTheSteps(t *testing.T) {
	d := openDrawing(t)
	at := place(t, d, outerBall)
	d.down(at)
	d.move(at.Add(plot.Point{Y: 5.4 * pixelsPerMM(d, outerBall)}), true)
	d.frame(1)
	if got := d.desk.Value("tieRodOuterHeight"); math.Abs(got+5.4) > 1e-9 {
		t.Errorf("height = %g, want -5.4", got)
	}
}

func TestKeysNudgeByASpacer(t *testing.T) {
	for _, tt := range []struct {
		name, label, key string
		shift            bool
		units            study.Units
		parameter        string
		want             float64
	}{
		{name: "up", label: outerBall, key: "ArrowUp", parameter: "tieRodOuterHeight", want: 1},
		{name: "down by ten", label: outerBall, key: "ArrowDown", shift: true, parameter: "tieRodOuterHeight", want: -10},
		{name: "along the arm, away from the axis", label: outerBall, key: "ArrowRight", parameter: "steeringArmLength", want: 1},
		{name: "in inches", label: outerBall, key: "ArrowUp", units: study.Inch, parameter: "tieRodOuterHeight", want: 25.4 / 16},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d := openDrawing(t)
			if err := d.desk.Session.SetDisplay("units", func(v *study.Display) { v.Units = tt.units }); err != nil {
				t.Fatal(err)
			}
			for i, h := range d.stage.Handles() {
				if h.Label == tt.label {
					if !d.key(i, tt.key, tt.shift) {
						t.Fatalf("%s means nothing to the handle", tt.key)
					}
					break
				}
			}
			if got := d.desk.Value(tt.parameter); math.Abs(got-tt.want) > 1e-9 {
				t.Errorf("%s = %g, want %g", tt.parameter, got, tt.want)
			}
		})
	}
}

func TestBoundsHoldADrag(t *testing.T) {
	d := openDrawing(t)
	at := place(t, d, outerBall)
	d.down(at)
	d.move(at.Add(plot.Point{Y: 5000}), false)
	d.frame(1)
	if got := d.desk.Value("tieRodOuterHeight"); got != -60 {
		t.Errorf("height = %g, want the usual bound of -60", got)
	}
}

func TestMarkerLiftsWheels(t *testing.T) {
	for _, tt := range []struct {
		motion solver.Motion
		want   [2]float64
	}{
		{solver.BothWheels, [2]float64{20, 20}},
		{solver.LeftWheel, [2]float64{20, 0}},
		{solver.RollMotion, [2]float64{20, -20}},
	} {
		d := openDrawing(t)
		d.desk.View.Motion = tt.motion
		for i, h := range d.stage.Handles() {
			if h.Label == leftWheel {
				d.key(i, "ArrowUp", true)
				d.key(i, "ArrowRight", true)
			}
		}
		if got := d.desk.View.Travel; got != tt.want {
			t.Errorf("%v: travel = %v, want %v", tt.motion, got, tt.want)
		}
	}
}

func TestPencilDrawsTheTarget(t *testing.T) {
	d := openDrawing(t)
	d.desk.View.Drawing = true
	from := place(t, d, leftWheel)
	d.down(from)
	d.move(from.Add(plot.Point{X: 20, Y: -60}), false)
	d.frame(1)
	d.up()
	target := d.desk.Session.Document().Search.Target
	most := 0.0
	for _, p := range target {
		if p[0] > 0 {
			most = math.Max(most, p[1])
		}
	}
	if !(most > 0.1) {
		t.Errorf("target = %v, want toe-in in bump, as drawn", target)
	}
	if d.desk.View.Travel != [2]float64{} {
		t.Errorf("travel = %v, want the wheels at rest while the target is drawn", d.desk.View.Travel)
	}
}

func TestHoverNamesTheJoint(t *testing.T) {
	d := openDrawing(t)
	d.move(place(t, d, "upper ball joint"), false)
	if got := d.desk.View.Point; got != "upperBallJoint" {
		t.Errorf("point = %q, want upperBallJoint", got)
	}
	d.move(plot.Point{X: -1, Y: -1}, false)
	if got := d.desk.View.Point; got != "" {
		t.Errorf("point off the sheet = %q, want none", got)
	}
}

func TestFocusNamesTheJoint(t *testing.T) {
	d := openDrawing(t)
	for i, h := range d.stage.Handles() {
		if h.Label != "lower ball joint" {
			continue
		}
		d.focus(i)
		if got := d.desk.View.Point; got != "lowerBallJoint" {
			t.Errorf("point = %q, want lowerBallJoint", got)
		}
		d.down(h.At)
		if got := d.hand.index(); got != i {
			t.Errorf("handle held = %d, want %d", got, i)
		}
		d.up()
		if got := d.hand.index(); got != -1 {
			t.Errorf("handle held after letting go = %d, want none", got)
		}
		return
	}
	t.Error("the lower ball joint has no handle")
}
