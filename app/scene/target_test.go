package scene

import (
	"math"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
	"toewright/solver"
)

// TestTargetLineIsTheTarget: what is drawn of a wanted curve is its value at every travel
// drawn, also where its points lie beyond the window, or all on one side of it; the line
// never turns back.
func TestTargetLineIsTheTarget(t *testing.T) {
	for _, points := range [][][2]float64{
		{{-20, 0.1}, {0, 0}, {20, -0.2}},
		{{-400, 0.1}, {0, 0}, {400, -0.2}},
		{{-30, 0.1}, {0, 0}, {15, 0.05}, {300, -0.6}},
		{{200, 0.1}, {300, 0.4}},
		{{-300, 0.1}, {-200, 0.4}},
	} {
		d := study.Template{Key: "double-wishbone-rack"}.Document()
		d.Search = &study.Search{Target: points}
		s := NewStage()
		desk := model.NewDesk(d)
		s.Draw(desk, Size{Width: 960, Height: 680})
		line, want := s.target(solver.Left), desk.Session.Cars().Target(solver.Left)
		if len(line.Y) < 2 {
			t.Fatalf("%v: %d points drawn", points, len(line.Y))
		}
		for i, at := range line.Y {
			if i > 0 && !(at > line.Y[i-1]) {
				t.Errorf("%v: the line goes from %g to %g", points, line.Y[i-1], at)
			}
			if got := line.X[i]; math.Abs(got-s.numbers.ToeValue(want.At(s.numbers.Units.Millimetres(at)))) > 1e-12 {
				t.Errorf("%v: %g drawn at %g", points, got, at)
			}
		}
	}
}
