package ui

import (
	"fmt"
	"math"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
	"toewright/solver"
)

// slider changes one parameter of a car, by hand or by a typed number.
type slider struct {
	app.Compo
	Bench     bench
	Car       int
	Key       string
	Parameter solver.Parameter
	Sides     solver.Selection
}

// Render shows the number, the slider and a way back.
func (s *slider) Render() app.UI {
	value := s.Bench.Desk.ValueOf(s.Car, s.Key)
	lo, hi := s.bounds(value)
	id := fmt.Sprintf("p%d-%s", s.Car, s.Key)
	return app.Div().Class("slider").Body(
		explain(s.label(), model.AboutParameter(s.Parameter.Key)),
		&field{
			ID: id, Label: s.label(), Hidden: true, Unit: s.Bench.numbers().ValueUnit(s.Parameter),
			Value: s.Bench.numbers().ValueNumber(s.Bench.document(), s.Parameter, value),
			Set:   s.typed, Step: s.step,
		},
		app.Input().Type("range").ID(id+"-slider").Aria("label", s.label()).
			Min(lo).Max(hi).Step(s.grain()).Value(attribute(value)).
			OnInput(s.slide, app.EventScope(id)).OnChange(s.release, app.EventScope(id)),
		only(s.changed(), func() app.UI {
			return button("Reset", s.reset, id).Class("reset").Aria("label", "Reset "+s.label())
		}),
	)
}

func (s *slider) label() string {
	if suffix := s.Sides.Suffix(); suffix != "" {
		return s.Parameter.Label + ", " + suffix[1:]
	}
	return s.Parameter.Label
}

// bounds are the usual ones of the parameter, widened to hold the value.
func (s *slider) bounds(value float64) (lo, hi string) {
	d := s.Bench.document()
	return attribute(math.Min(d.FromSolver(s.Parameter, s.Parameter.Min), value)), attribute(math.Max(d.FromSolver(s.Parameter, s.Parameter.Max), value))
}

// grain is the step of the slider: 0.1 mm, 1/256 in or 0.01 degrees.
func (s *slider) grain() float64 {
	switch {
	case s.Parameter.Quantity == solver.AngleQuantity:
		return 0.01
	case s.Bench.document().Units == study.Inch:
		return 1.0 / 256
	}
	return 0.1
}

// spacer is the step of an arrow key: 0.5 mm, 1/32 in or 0.05 degrees.
func (s *slider) spacer() float64 {
	switch {
	case s.Parameter.Quantity == solver.AngleQuantity:
		return 0.05
	case s.Bench.document().Units == study.Inch:
		return 1.0 / 32
	}
	return 0.5
}

func attribute(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }

func (s *slider) changed() bool {
	car := s.Bench.cars().At(s.Car)
	if car == nil {
		return false
	}
	_, ok := car.Changes[s.Key]
	return ok
}

// set gives the parameter a value. Sets of one run are undone together.
func (s *slider) set(ctx app.Context, value float64, run string) error {
	return s.Bench.change(ctx, func() error { return s.Bench.Desk.Set(s.Key, value, run) })
}

func (s *slider) typed(ctx app.Context, text string) error {
	value, err := s.Bench.numbers().ParseValue(s.Bench.document(), s.Parameter, text)
	if err != nil {
		return err
	}
	return s.set(ctx, value, "")
}

func (s *slider) step(ctx app.Context, n int) {
	grid := s.spacer()
	steps := math.Round(s.Bench.Desk.ValueOf(s.Car, s.Key)/grid) + float64(n)
	s.Bench.tell(ctx, s.set(ctx, steps*grid, "step "+s.Key))
}

func (s *slider) slide(ctx app.Context, _ app.Event) {
	value, err := strconv.ParseFloat(ctx.JSSrc().Get("value").String(), 64)
	if err == nil {
		s.Bench.tell(ctx, s.set(ctx, value, "slide "+s.Key))
	}
}

func (s *slider) release(app.Context, app.Event) { s.Bench.session().EndRun() }

func (s *slider) reset(ctx app.Context, _ app.Event) {
	s.Bench.edit(ctx, func() error { return s.Bench.session().ClearChange(s.Car, s.Key) })
}
