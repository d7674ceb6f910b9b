package scene_test

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/app/scene"
	"toewright/internal/plot"
	"toewright/internal/study"
	"toewright/solver"
)

// TestHandlesFollowTheirParameters changes each parameter that a handle moves by 1 mm
// and holds where the handle then stands against the step that it promised.
func TestHandlesFollowTheirParameters(t *testing.T) {
	// A part changed lifts its ball by itself; that the setpoints hold moves the
	// knuckle a little too.
	const slack = 0.25
	for _, template := range study.Templates() {
		t.Run(template.Key, func(t *testing.T) {
			desk := deskOf(t, template.Key)
			stage := scene.NewStage()
			desk.Select(0)
			stage.Draw(desk, paper)
			for i, h := range append([]scene.Handle(nil), stage.Handles()...) {
				for _, m := range h.Moves {
					if m.Key == "" {
						continue
					}
					got := moved(t, desk, stage, i, m.Key).Sub(h.At)
					if off := got.Sub(m.Step).Length(); !(off <= slack*m.Step.Length()+0.02) {
						t.Errorf("%s, %s by 1 mm: handle moves by %.3f, want %.3f", h.Label, m.Key, got, m.Step)
					}
				}
			}
		})
	}
}

// moved returns where handle i stands once a parameter of the base car is changed by
// 1 mm, and takes the change back.
func moved(t *testing.T, desk *model.Desk, stage *scene.Stage, i int, key string) plot.Point {
	t.Helper()
	for len(desk.Session.Document().Candidates) >= model.MaxCandidates {
		if err := desk.Delete(1); err != nil {
			t.Fatal(err)
		}
	}
	desk.Select(0)
	if err := desk.Set(key, desk.Session.Document().Units.FromMillimetres(1), ""); err != nil {
		t.Fatal(err)
	}
	stage.Draw(desk, paper)
	return stage.Handles()[i].At
}

// TestEveryTemplateIsDrawn draws every car in several positions and sizes.
func TestEveryTemplateIsDrawn(t *testing.T) {
	for _, template := range study.Templates() {
		desk := deskOf(t, template.Key)
		stage := scene.NewStage()
		for _, travel := range []float64{0, 500, -500} {
			desk.View.Lift(solver.Left, travel)
			desk.View.Instant = true
			for face := model.FrontFace; face <= model.OrbitFace; face++ {
				desk.View.Face = face
				for _, size := range []scene.Size{paper, {Width: 390, Height: 380}} {
					out := stage.Draw(desk, size)
					if err := stage.Err(); err != nil {
						t.Fatalf("%s at %g mm: %v", template.Key, travel, err)
					}
					checkPaths(t, template.Key, out)
				}
			}
		}
	}
}

// checkPaths fails the test if a path holds what is no number, which plot writes as
// a place far off any paper.
func checkPaths(t *testing.T, name string, out *scene.Output) {
	t.Helper()
	drawn := 0
	for i := range scene.SlotCount() {
		s := scene.Slot(i)
		if s.IsText() {
			if text := out.Text(s).Content; strings.Contains(text, "NaN") {
				t.Errorf("%s: text %q", name, text)
			}
			continue
		}
		path := out.Path(s)
		if bytes.Contains(path, []byte("10000000")) {
			t.Errorf("%s: path of %s holds what is no number", name, s.ID())
		}
		if len(path) > 0 {
			drawn++
		}
	}
	if drawn < 20 {
		t.Errorf("%s: %d paths are drawn, want a whole sheet", name, drawn)
	}
}

// TestFiguresStayOnTheSheet changes both dimensions of the arm and looks where the figures
// end.
func TestFiguresStayOnTheSheet(t *testing.T) {
	desk := deskOf(t, "double-wishbone-rack")
	for key, mm := range map[string]float64{"tieRodOuterHeight": -25, "steeringArmLength": 11.78} {
		if err := desk.Set(key, mm, ""); err != nil {
			t.Fatal(err)
		}
	}
	for _, size := range []scene.Size{paper, {Width: 1010, Height: 620}, {Width: 688, Height: 490}} {
		out := scene.NewStage().Draw(desk, size)
		shown := 0
		for i := range scene.SlotCount() {
			text := out.Text(scene.Slot(i))
			if text.Content != "−25.00" && text.Content != "+11.78" {
				continue
			}
			shown++
			end := text.At.X + plot.TextWidth(text.Content, 11)
			if text.Align == plot.Middle {
				end = text.At.X + plot.TextWidth(text.Content, 11)/2
			}
			if !(end <= size.Width) {
				t.Errorf("%v: %s ends at %.1f, off the sheet", size, text.Content, end)
			}
		}
		if shown != 2 {
			t.Errorf("%v: %d figures are shown, want both", size, shown)
		}
	}
}

func TestProbe(t *testing.T) {
	desk := deskOf(t, "double-wishbone-rack")
	stage := scene.NewStage()
	desk.View.Motion = solver.LeftWheel
	desk.View.Lift(solver.Left, 25)
	stage.Draw(desk, paper)
	for _, h := range stage.Handles() {
		switch h.Kind {
		case scene.MarkerHandle:
			if side, ok := stage.ChartAt(h.At); !ok || side != h.Side {
				t.Errorf("chart under the %s marker = %v, %t", h.Side, side, ok)
			}
			want := desk.View.Travel[h.Side]
			if got := stage.TravelAt(h.Side, h.At); math.Abs(got-want) > 0.1 {
				t.Errorf("travel under the %s marker = %g mm, want %g", h.Side, got, want)
			}
			if got := stage.SampleAt(h.Side, h.At).Value; math.Abs(got-stage.ToeChange(h.Side).Radians()) > 1e-4 {
				t.Errorf("toe change under the %s marker = %g rad, want %g", h.Side, got, stage.ToeChange(h.Side).Radians())
			}
		case scene.WheelHandle:
			if side, ok := stage.TyreAt(h.At); !ok || side != h.Side {
				t.Errorf("tyre under the %s wheel = %v, %t", h.Side, side, ok)
			}
		case scene.PartHandle:
			if key, _ := stage.JointAt(h.At); key == "" {
				t.Errorf("no joint under the handle of %s", h.Label)
			}
		}
	}
	if stage.OrbitAt(plot.Point{X: 300, Y: 500}) {
		t.Error("the sheet can be turned where no orbit view is")
	}
}

func TestToeScaleKeepsStillUnderADrag(t *testing.T) {
	desk := deskOf(t, "double-wishbone-rack")
	for len(desk.Session.Document().Candidates) > 0 {
		if err := desk.Delete(1); err != nil {
			t.Fatal(err)
		}
	}
	desk.Select(0)
	stage := scene.NewStage()
	stage.Draw(desk, paper)
	wide := toeSpan(stage)
	desk.View.Alone = true
	stage.Holding = true
	if err := desk.Set("tieRodOuterHeight", -60, "drag"); err != nil {
		t.Fatal(err)
	}
	stage.Draw(desk, paper)
	wider := toeSpan(stage)
	if err := desk.Set("tieRodOuterHeight", 0, "drag"); err != nil {
		t.Fatal(err)
	}
	stage.Draw(desk, paper)
	if got := toeSpan(stage); !(wider > wide) || got != wider {
		t.Errorf("toe spans %g, then %g, then while held %g; want it to grow and not to shrink", wide, wider, got)
	}
	stage.Holding = false
	stage.Draw(desk, paper)
	if got := toeSpan(stage); got != wide {
		t.Errorf("toe spans %g once let go, want %g again", got, wide)
	}
}

// TestZoomFitsTheSelectedCar: the toe scale goes by the selected car's curve alone, and
// by what a gauge shows at least; it is as before once all is shown again.
func TestZoomFitsTheSelectedCar(t *testing.T) {
	desk := deskOf(t, "double-wishbone-rack")
	stage := scene.NewStage()
	span := func(car int, zoomed bool) float64 {
		desk.Select(car)
		desk.View.Zoomed = zoomed
		stage.Draw(desk, paper)
		return toeSpan(stage)
	}
	all := span(2, false)
	// The base car's curve is the widest of all; that of 12 mm spacers is nearly flat.
	base, flat := span(0, true), span(2, true)
	if base != all || !(flat < all/10) {
		t.Errorf("toe spans %g of all cars, %g zoomed to the base car, %g to the flat one", all, base, flat)
	}
	if err := desk.Set("tieRodOuterHeight", -12.36, ""); err != nil {
		t.Fatal(err)
	}
	if least := span(2, true); !(least > flat/5) {
		t.Errorf("toe spans %g of a curve that is flatter still: noise shows", least)
	}
	if got := span(2, false); got != all {
		t.Errorf("toe spans %g in full again, want %g", got, all)
	}
}

// toeSpan returns the toe in radians from one place of the left chart to another.
func toeSpan(stage *scene.Stage) float64 {
	a, b := plot.Point{X: 60, Y: 200}, plot.Point{X: 160, Y: 200}
	return stage.SampleAt(solver.Left, b).Value - stage.SampleAt(solver.Left, a).Value
}

// TestFrameIsThatOfAFreshStage holds frames of a stage that keeps what does not change
// against those of stages that have never drawn before.
func TestFrameIsThatOfAFreshStage(t *testing.T) {
	desk := deskOf(t, "double-wishbone-rack")
	stage := scene.NewStage()
	set := func(do func() error) func() {
		return func() {
			if err := do(); err != nil {
				t.Fatal(err)
			}
		}
	}
	for _, tt := range []struct {
		name string
		do   func()
	}{
		{"opened", func() {}},
		{"part changed", set(func() error { return desk.Set("tieRodOuterHeight", -7, "drag") })},
		{"steered", func() { desk.View.Steer = 10 }},
		{"steered further", func() { desk.View.Steer = 15 }},
		{"in inches", set(func() error {
			return desk.Session.SetDisplay("units", func(v *study.Display) { v.Units = study.Inch })
		})},
		{"straight ahead, one alone", func() { desk.View.Steer, desk.View.Alone = 0, true }},
		{"all again", func() { desk.View.Alone = false }},
		{"zoomed", func() { desk.View.Zoomed = true }},
		{"another car selected", func() { desk.Select(2) }},
		{"in full again", func() { desk.View.Zoomed = false }},
		{"one deleted", set(func() error { return desk.Delete(1) })},
		{"undone", func() { desk.Session.Undo() }},
		{"cannot be solved", set(func() error {
			return desk.Session.Edit("spoil", "", func(d *study.Document) { d.Suspension.Left.Points["upperBallJoint"] = study.Vec3{} })
		})},
		{"can again", func() { desk.Session.Undo() }},
	} {
		tt.do()
		got := file(stage.Draw(desk, paper), paper)
		want := file(scene.NewStage().Draw(desk, paper), paper)
		if !bytes.Equal(got, want) {
			t.Errorf("%s: the frame is not that of a fresh stage", tt.name)
		}
	}
}
