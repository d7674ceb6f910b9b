package ui

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/solver"
)

// Strip is the key of the drawing: every car with its line and how good it is, below
// the sheet whichever panel is open.
type Strip struct {
	app.Compo

	Desk    *model.Desk
	Changed func(app.Context) // to be called after any edit of the desk

	slidTo int // the car that was brought into view last
}

// OnUpdate brings the key of another selected car into view.
func (s *Strip) OnUpdate(ctx app.Context) {
	if car := s.Desk.View.Car; car != s.slidTo {
		s.slidTo = car
		ctx.Defer(func(app.Context) { slideTo(".strip", ".strip [aria-pressed=true]") })
	}
}

// Render shows a button for each car.
func (s *Strip) Render() app.UI {
	cars := s.Desk.Session.Cars().List
	return app.Nav().Class("strip").Aria("label", "Cars on the sheet").Body(
		app.Range(cars).Slice(func(i int) app.UI { return s.car(cars[i]) }),
	)
}

// car is the button that selects a car.
func (s *Strip) car(c *model.Car) app.UI {
	class := "key"
	if c.Hidden {
		class += " hidden-car"
	}
	return app.Button().Type("button").Class(class).Aria("pressed", c == s.Desk.Selected()).
		OnClick(func(ctx app.Context, _ app.Event) {
			s.Desk.Select(c.Index)
			s.Changed(ctx)
		}, app.EventScope("key", c.Index)).
		Body(
			swatch(c.Index),
			app.Span().Class("key-name").Text(carName(c)),
			app.Span().Class("key-figure").ID(keyFigureID(c.Index)).Text(keyFigure(s.Desk, c)),
		)
}

// keyFigureID is the id of the element with a car's figure.
func keyFigureID(car int) string { return "key-figure-" + strconv.Itoa(car) }

// keyFigure is the RMS of the worse side.
func keyFigure(d *model.Desk, c *model.Car) string {
	if c.Err != nil {
		return "cannot be solved"
	}
	n := model.NumbersOf(d.Session.Document())
	return "RMS " + n.ToeNumber(solver.Angle(model.RMSFigure.Worse(c)))
}
