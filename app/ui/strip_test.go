package ui

import (
	"testing"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
	"toewright/solver"
)

func TestStripSaysHowGoodCarsAre(t *testing.T) {
	d := openDrawing(t).desk
	s := &Strip{Desk: d}
	if err := d.Session.Edit("spoil", "", func(doc *study.Document) {
		doc.Candidates[0].Changes = study.Changes{"caster": 60}
		doc.Candidates = doc.Candidates[:1]
	}); err != nil {
		t.Fatal(err)
	}
	cars := d.Session.Cars()
	n := model.NumbersOf(d.Session.Document())
	for i, want := range []string{n.ToeNumber(solver.Angle(model.PeakFigure.Worse(cars.Base()))), "cannot be solved"} {
		if got := keyFigure(s.Desk, cars.At(i)); got != want {
			t.Errorf("figure of car %d = %q, want %q", i, got, want)
		}
	}
	engine := app.NewTestEngine()
	if err := engine.Load(s); err != nil {
		t.Fatal(err)
	}
	for i, want := range []string{carName(cars.Base()), cars.At(1).Name} {
		if err := app.Match(app.Text(want), s, 0, i+1, 1, 0); err != nil {
			t.Errorf("name of car %d: %v", i, err)
		}
	}
}
