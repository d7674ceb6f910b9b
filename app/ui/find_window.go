package ui

import (
	"errors"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/internal/study"
)

// findWindow sets the travel over which a curve is judged.
type findWindow struct {
	app.Compo
	Bench bench
}

// Render shows bump, droop and step in one line.
func (w *findWindow) Render() app.UI {
	now := w.Bench.document().SearchWindow()
	return app.FieldSet().Class("window").Body(
		app.Legend().Body(explain("Window", aboutWindow)),
		app.Div().Class("row").Body(
			w.field("bump", "bump", now.Bump, func(t *study.Travel, x float64) { t.Bump = x }),
			w.field("droop", "droop", now.Droop, func(t *study.Travel, x float64) { t.Droop = x }),
			w.field("step", "every", now.Step, func(t *study.Travel, x float64) { t.Step = x }),
		),
	)
}

// errWindow is what a travel below 0 is refused with.
var errWindow = errors.New("bump and droop are distances: 0 or more")

func (w *findWindow) field(id, label string, value float64, put func(*study.Travel, float64)) app.UI {
	n, d := w.Bench.numbers(), w.Bench.document()
	return &field{
		ID: "window-" + id, Label: label, Unit: n.LengthUnit(), Value: n.LengthNumber(d.Units.Millimetres(value)),
		Set: func(ctx app.Context, text string) error {
			mm, err := n.ParseLength(text)
			if err != nil {
				return err
			}
			t := w.Bench.document().SearchWindow()
			put(&t, d.Units.FromMillimetres(mm))
			if !(t.Bump >= 0 && t.Droop >= 0) {
				return errWindow
			}
			return w.Bench.edit(ctx, func() error { return w.Bench.session().SetWindow(t) })
		},
	}
}
