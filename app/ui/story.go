package ui

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/solver"
)

// story tells a newcomer what the demo shows, in three steps that each can be done.
type story struct {
	app.Compo
	Bench bench
	Open  func(app.Context, string) // opens a panel
	Close func(app.Context)
}

// Render shows the steps; nothing where there is no candidate that mends the base car.
func (s *story) Render() app.UI {
	cars := s.Bench.cars()
	base, best := cars.Base(), bestOf(cars)
	if base == nil || base.Err != nil || best == nil {
		return app.Div()
	}
	step := func(text string, buttons ...app.UI) app.UI {
		return app.Li().Body(app.Div().Body(app.P().Text(text), app.Div().Class("deeds").Body(buttons...)))
	}
	return app.Section().ID("story").Class("story").Aria("label", "What the demo shows").Body(
		app.Ol().Body(
			step("An invented car: through their travel its front wheels change toe by "+s.worst(base)+".",
				s.choose("Show it", base)),
			step(fmt.Sprintf("%s (%s) brings that down to %s. Drag a ringed ball, and the curve follows.",
				best.Name, model.InWords(s.Bench.document(), cars, best.Changes), s.Bench.numbers().ToeText(peakOf(best))),
				s.choose("Show it", best)),
			step("Now your own car: take the template most like it, type its points over, and look for the part.",
				button("Car", func(ctx app.Context, _ app.Event) { s.Open(ctx, "car") }),
				button("Find", func(ctx app.Context, _ app.Event) { s.Open(ctx, "find") })),
		),
		button("×", func(ctx app.Context, _ app.Event) { s.Close(ctx) }, "story").ID("story-close").Aria("label", "Close what the demo shows"),
	)
}

func (s *story) choose(text string, car *model.Car) app.UI {
	return button(text, func(ctx app.Context, _ app.Event) {
		s.Bench.Desk.Select(car.Index)
		s.Bench.Changed(ctx)
	}, car.Index)
}

// worst says how far a car's toe changes where it changes most, and where that is.
func (s *story) worst(car *model.Car) string {
	f := &car.Figures[solver.Left]
	if right := &car.Figures[solver.Right]; right.Peak > f.Peak {
		f = right
	}
	way, at := "bump", f.PeakTravel
	if at < 0 {
		way, at = "droop", -at
	}
	n := s.Bench.numbers()
	return fmt.Sprintf("%s (at %s of %s)", n.ToeText(f.Peak), n.Travel(at), way)
}

// bestOf returns the candidate that comes nearest to the target, nil where none can be
// solved.
func bestOf(cars *model.Cars) *model.Car {
	for _, car := range model.Table(cars, model.Order{ByFigure: true, Figure: model.RMSFigure}) {
		if car.Index > 0 && car.Err == nil {
			return car
		}
	}
	return nil
}

// peakOf is the largest toe change of the worse side.
func peakOf(car *model.Car) solver.Angle {
	return solver.Angle(model.PeakFigure.Worse(car))
}
