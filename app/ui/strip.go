package ui

import (
	"strconv"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/solver"
)

// Strip is the key of the drawing: every car with its mark and its worst peak, below the
// stage. A press selects a car; with Shift, or a long one of a finger, it makes the car
// the reference.
type Strip struct {
	app.Compo

	Desk    *model.Desk
	Changed func(app.Context)      // to be called after any edit of the desk
	Refer   func(app.Context, int) // makes a car the reference
	After   func(time.Duration, func(app.Context))

	slidTo int // the car that was brought into view last
	hold   int // counts the presses, so that one that has ended is known
	held   bool
}

// longPress is how long a finger rests on a car to make it the reference.
const longPress = 500 * time.Millisecond

// OnUpdate brings the key of another selected car into view.
func (s *Strip) OnUpdate(app.Context) {
	if car := s.Desk.View.Car; car != s.slidTo {
		s.slidTo = car
		afterFrame(func() { slideTo(".strip", ".strip [aria-pressed=true]") })
	}
}

// Render shows a button for each car.
func (s *Strip) Render() app.UI {
	cars := s.Desk.Session.Cars().List
	return app.Nav().Class("strip").Aria("label", "Cars on the sheet").Body(
		app.Div().Class("strip-head").Text("Worst peak"),
		app.Range(cars).Slice(func(i int) app.UI { return s.car(cars[i]) }),
	)
}

// car is the button that selects a car.
func (s *Strip) car(c *model.Car) app.UI {
	class, title := "key", carName(c)
	if c.Hidden {
		class += " hidden-car"
		title += ", hidden"
	}
	if c.Index == s.Desk.View.Yardstick {
		class += " reference"
		title += ", the reference"
	}
	return app.Button().Type("button").Class(class).Aria("pressed", c == s.Desk.Selected()).Title(title).
		OnClick(func(ctx app.Context, e app.Event) { s.press(ctx, e, c.Index) }, app.EventScope("key", c.Index)).
		On("pointerdown", func(ctx app.Context, e app.Event) { s.down(ctx, e, c.Index) }, app.EventScope("down", c.Index)).
		On("pointerup", s.release).On("pointercancel", s.release).On("pointerleave", s.release).
		On("contextmenu", func(ctx app.Context, e app.Event) {
			if s.held {
				e.PreventDefault()
			}
		}).
		Body(
			badge(c.Index),
			app.Span().Class("key-name").Text(carName(c)),
			app.Span().Class("key-figure").ID(keyFigureID(c.Index)).Text(keyFigure(s.Desk, c)),
		)
}

// press selects a car, or makes it the reference.
func (s *Strip) press(ctx app.Context, e app.Event, car int) {
	switch {
	case s.held: // the press that has made it the reference ends
		s.held = false
	case e.Get("shiftKey").Bool():
		s.Refer(ctx, car)
	default:
		s.Desk.Select(car)
		s.Changed(ctx)
	}
}

// down waits whether a finger rests.
func (s *Strip) down(ctx app.Context, e app.Event, car int) {
	ctx.PreventUpdate()
	s.held = false
	if e.Get("pointerType").String() != "touch" {
		return
	}
	s.hold++
	press := s.hold
	s.After(longPress, func(ctx app.Context) {
		if s.hold == press {
			s.held = true
			s.Refer(ctx, car)
		}
	})
}

// release ends a press.
func (s *Strip) release(ctx app.Context, _ app.Event) {
	ctx.PreventUpdate()
	s.hold++
}

// keyFigureID is the id of the element with a car's figure.
func keyFigureID(car int) string { return "key-figure-" + strconv.Itoa(car) }

// keyFigure is the peak of the worse side.
func keyFigure(d *model.Desk, c *model.Car) string {
	if c.Err != nil {
		return "cannot be solved"
	}
	return model.NumbersOf(d.Session.Document()).ToeNumber(solver.Angle(model.PeakFigure.Worse(c)))
}
