package ui

import (
	"fmt"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/internal/study"
)

// tools are at hand whichever panel is open: the study's name and whether it is kept,
// undo and redo, and how numbers are written.
func (p *Panels) tools(b bench) app.UI {
	s := p.Desk.Session
	return app.Div().Class("tools").Body(
		p.studyMenu(b),
		app.Div().Class("tools-buttons").Body(
			backward("undo", "Undo", s.CanUndo(), p.undo),
			backward("redo", "Redo", s.CanRedo(), p.redo),
			app.Button().Type("button").ID("commands").Text("Commands").Title("Commands, Ctrl K").
				OnClick(func(ctx app.Context, _ app.Event) { p.cover(paletteOver)(ctx) }),
			&display{Bench: b},
		),
	)
}

// backward is the button that goes one step back or forward, and says which.
func backward(id, word, label string, do func(app.Context)) app.UI {
	title := word + " " + label
	if label == "" {
		title = "nothing to " + id
	}
	return app.Button().Type("button").ID(id).Text(word).Title(title).Aria("label", title).Disabled(label == "").
		OnClick(func(ctx app.Context, _ app.Event) { do(ctx) })
}

func (p *Panels) undo(ctx app.Context) {
	wanted := p.Desk.Session.CanUndo()
	switch label := p.Desk.Session.Undo(); {
	case label != "":
		p.say(ctx, "Undone: "+label+".", nil)
		p.Changed(ctx)
	case wanted != "":
		p.say(ctx, "What was before "+wanted+" cannot be read any more, and nothing has changed. What is kept stands in the study's menu, under History.", nil)
	}
}

func (p *Panels) redo(ctx app.Context) {
	if label := p.Desk.Session.Redo(); label != "" {
		p.say(ctx, "Done again: "+label+".", nil)
		p.Changed(ctx)
	}
}

// display sets the units that numbers are written in.
type display struct {
	app.Compo
	Bench bench
}

// Render shows a closed sheet with the units.
func (d *display) Render() app.UI {
	n := d.Bench.numbers()
	return app.Details().Class("display").Body(
		app.Summary().ID("units").Aria("label", "Units: "+unitsText(n)).Text(unitsText(n)),
		app.Div().Class("display-box").Body(
			choices("lengths", "Lengths", lengthStyle(n), lengthStyles, d.setLengths),
			choices("toe", "Toe", toeStyle(n), []choice{{"degrees", "degrees"}, {"indicators", "as two indicators read it"}, {"plate", "as a plate reads it"}}, d.setToe),
			app.If(n.Gauge != number.Degrees, func() app.UI {
				return &field{ID: "toe-base", Label: "Base of the gauge", Unit: n.LengthUnit(), Value: n.LengthNumber(n.Base), Set: d.setBase}
			}),
			app.P().Class("note").Text("Indicators a base apart read base × tan(toe), a plate on the hub base × sin(toe). Toe is per wheel, toe-in positive."),
		),
	)
}

func unitsText(n model.Numbers) string {
	text := n.LengthUnit()
	if n.Fractions() {
		text += fmt.Sprintf(" 1/%d", n.Fraction)
	}
	if n.Gauge == number.Degrees {
		return text + ", deg"
	}
	return text + ", toe over " + n.Travel(n.Base)
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

func (d *display) setLengths(ctx app.Context, style string) {
	d.set(ctx, func(v *study.Display) { showLengths(v, style) })
}

func (d *display) setToe(ctx app.Context, style string) {
	d.set(ctx, func(v *study.Display) { v.Toe = style })
}

func (d *display) setBase(ctx app.Context, text string) error {
	mm, err := d.Bench.numbers().ParseLength(text)
	if err != nil {
		return err
	}
	if !(mm > 0) {
		return errBase
	}
	return d.set(ctx, func(v *study.Display) { v.Base = d.Bench.document().Units.FromMillimetres(mm) })
}

func (d *display) set(ctx app.Context, change func(*study.Display)) error {
	return d.Bench.edit(ctx, func() error { return d.Bench.session().SetDisplay("units", change) })
}
