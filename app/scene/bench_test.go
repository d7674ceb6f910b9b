package scene_test

import (
	"testing"

	"toewright/app/model"
	"toewright/app/scene"
	"toewright/internal/study"
)

// fullDesk is the demo with as many candidates as there can be.
func fullDesk(t testing.TB) *model.Desk {
	t.Helper()
	desk := model.NewDesk(study.Template{Key: "double-wishbone-rack"}.Document())
	for len(desk.Session.Document().Candidates) < model.MaxCandidates {
		if _, err := desk.Session.Duplicate(1); err != nil {
			t.Fatal(err)
		}
	}
	return desk
}

// BenchmarkEdit changes a part and solves what follows from it.
func BenchmarkEdit(b *testing.B) {
	desk := fullDesk(b)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		if err := desk.Set("tieRodOuterHeight", -float64(i%10), "drag"); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkDraw draws a frame of a moving car.
func BenchmarkDraw(b *testing.B) {
	desk := fullDesk(b)
	stage := scene.NewStage()
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		desk.View.Lift(0, float64(i%40))
		stage.Draw(desk, scene.Size{Width: 960, Height: 680})
	}
}
