package ui

import (
	"fmt"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/internal/study"
)

// units is the menu of how numbers are written. A phone shows the unit of lengths alone.
func (p *Panels) units(b bench) app.UI {
	d := display{b}
	lengths, toe := unitsText(b.numbers())
	label := app.Button().Class("bare").Aria("label", "Units: "+lengths+", "+toe).
		Body(app.Text(lengths), app.Span().Class("units-toe").Text(" · "+toe))
	return p.dropdown("units", label, d.fields)
}

// display sets the units that numbers are written in.
type display struct{ Bench bench }

// fields are the choices of the units.
func (d display) fields() app.UI {
	n := d.Bench.numbers()
	return app.Div().Body(
		choices("lengths", "Lengths", lengthStyle(n), lengthStyles, d.setLengths),
		d.toe(),
		app.P().Class("note").Text("Indicators a base apart read base × tan(toe), a plate on the hub base × sin(toe). Toe is per wheel, toe-in positive."),
	)
}

// toe are the choices of how toe is read.
func (d display) toe() app.UI {
	n := d.Bench.numbers()
	return app.Div().Body(
		choices("toe", "Toe", toeStyle(n), []choice{{"degrees", "degrees"}, {"indicators", "as two indicators read it"}, {"plate", "as a plate reads it"}}, d.setToe),
		only(n.Gauge != number.Degrees, func() app.UI {
			return &field{ID: "toe-base", Label: "Base of the gauge", Unit: n.LengthUnit(), Value: n.LengthNumber(n.Base), Set: d.setBase}
		}),
	)
}

// unitsText says in what lengths and toe are written.
func unitsText(n model.Numbers) (lengths, toe string) {
	lengths = n.LengthUnit()
	if n.Fractions() {
		lengths += fmt.Sprintf(" 1/%d", n.Fraction)
	}
	if n.Gauge == number.Degrees {
		return lengths, "toe in deg"
	}
	return lengths, "toe per " + n.Travel(n.Base)
}

// lengthStyles are the ways to show lengths: a unit, and the denominator of fractions.
var lengthStyles = []choice{
	{"mm", "mm"}, {"in", "in"}, {"in16", "in, 1/16"}, {"in32", "in, 1/32"}, {"in64", "in, 1/64"},
}

func lengthStyle(n model.Numbers) string {
	if n.Fractions() {
		return fmt.Sprintf("in%d", n.Fraction)
	}
	return n.LengthUnit()
}

// showLengths sets one of the ways to show lengths.
func showLengths(v *study.Display, style string) {
	v.Units = study.Units(style[:2])
	of, _ := strconv.Atoi(style[2:])
	v.Fraction = study.Fraction(of)
}

func toeStyle(n model.Numbers) string {
	return n.Gauge.String()
}

func (d display) setLengths(ctx app.Context, style string) {
	d.Bench.tell(ctx, d.set(ctx, func(v *study.Display) { showLengths(v, style) }))
}

func (d display) setToe(ctx app.Context, style string) {
	d.Bench.tell(ctx, d.set(ctx, func(v *study.Display) { v.Toe = style }))
}

func (d display) setBase(ctx app.Context, text string) error {
	mm, err := d.Bench.numbers().ParseLength(text)
	if err != nil {
		return err
	}
	if !(mm > 0) {
		return errBase
	}
	return d.set(ctx, func(v *study.Display) { v.Base = d.Bench.document().Units.FromMillimetres(mm) })
}

func (d display) set(ctx app.Context, change func(*study.Display)) error {
	return d.Bench.change(ctx, func() error { return d.Bench.session().SetDisplay("units", change) })
}
