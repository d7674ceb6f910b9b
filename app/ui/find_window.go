package ui

import (
	"errors"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/internal/study"
)

// windowFields sets a window of travel: that over which curves are judged, or drawn.
type windowFields struct {
	app.Compo
	Bench       bench
	ID          string
	Name, About string
	Now         study.Travel
	Put         func(study.Travel) error // Put sets the window, in file units.
}

// findWindow is the travel over which a curve is judged.
func (b bench) findWindow() app.UI {
	return &windowFields{Bench: b, ID: "window", Name: "Window", About: aboutWindow, Now: b.document().SearchWindow(), Put: b.session().SetWindow}
}

const aboutTravel = "How far the wheel goes up and down from where it stood when the points were measured. Curves are drawn over it, and judged over it unless Find has a window of its own."

// carTravel is the travel over which a curve is drawn.
func (b bench) carTravel() app.UI {
	return &windowFields{Bench: b, ID: "travel", Name: "Travel", About: aboutTravel, Now: b.document().Window(), Put: b.session().SetTravel}
}

// Render shows bump, droop and step in one line.
func (w *windowFields) Render() app.UI {
	now := w.Now
	return app.FieldSet().Class("window").Body(
		app.Legend().Body(explain(w.Name, w.About)),
		app.Div().Class("row").Body(
			w.field("bump", "bump", now.Bump, func(t *study.Travel, x float64) { t.Bump = x }),
			w.field("droop", "droop", now.Droop, func(t *study.Travel, x float64) { t.Droop = x }),
			w.field("step", "every", now.Step, func(t *study.Travel, x float64) { t.Step = x }),
		),
	)
}

// errWindow is what a travel below 0 is refused with.
var errWindow = errors.New("bump and droop are distances: 0 or more")

func (w *windowFields) field(id, label string, value float64, put func(*study.Travel, float64)) app.UI {
	n, d := w.Bench.numbers(), w.Bench.document()
	return &field{
		ID: w.ID + "-" + id, Label: label, Unit: n.LengthUnit(), Value: n.LengthNumber(d.Units.Millimetres(value)),
		Set: func(ctx app.Context, text string) error {
			mm, err := n.ParseLength(text)
			if err != nil {
				return err
			}
			t := w.Now
			put(&t, d.Units.FromMillimetres(mm))
			if !(t.Bump >= 0 && t.Droop >= 0) {
				return errWindow
			}
			return w.Bench.change(ctx, func() error { return w.Put(t) })
		},
	}
}
