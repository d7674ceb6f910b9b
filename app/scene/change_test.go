package scene

import (
	"math"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

// TestChangeIsFromTheReference: the dashed arm and the dimension at the ball are of the car
// that the selected one is held against, whichever that is; held against itself it has
// neither.
func TestChangeIsFromTheReference(t *testing.T) {
	d := study.Template{Key: "double-wishbone-rack"}.Document()
	d.Candidates = []study.Candidate{
		{Name: "six", Changes: study.Changes{"tieRodOuterHeight": -6}},
		{Name: "ten", Changes: study.Changes{"tieRodOuterHeight": -10}},
	}
	desk := model.NewDesk(d)
	desk.Select(2)
	for reference, want := range []float64{-10, -4, 0} {
		desk.View.Yardstick = reference
		s := NewStage()
		out := s.Draw(desk, Size{Width: 960, Height: 680})
		if got := s.changeOf("tieRodOuterHeight"); math.Abs(got-want) > 1e-12 {
			t.Errorf("against car %d: %g mm, want %g", reference, got, want)
		}
		arm := s.rig.arm[0]
		apart := s.rig.place(&s.placed, arm).Sub(s.rig.place(&s.ghost, arm)).Z
		if math.Abs(apart-want) > 0.5 { // the knuckle turns about its axis too
			t.Errorf("against car %d: the balls are %g mm apart, want %g", reference, apart, want)
		}
		drawn := len(out.Path(nodes.views[frontView].ghost)) > 0
		if drawn != (want != 0) {
			t.Errorf("against car %d: a dashed arm is drawn: %t", reference, drawn)
		}
	}
}
