package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
)

// pad shows the fields of a row and big keys for them.
func (r *readings) pad(run model.Run) app.UI {
	k := &r.State.keypad
	k.Expect(r.Bench.numbers(), run.NextTravel(r.Bench.document(), r.State.last))
	keys := padKeys(r.Bench.numbers().Units)
	return app.Div().Class("pad").Body(
		app.Div().Class("pad-fields").Body(
			r.padField(model.TravelField, "Travel"), r.padField(model.LeftField, "Left"), r.padField(model.RightField, "Right"),
		),
		app.If(r.State.fault != "", func() app.UI { return app.P().Class("problem").Role("alert").Text(r.State.fault) }),
		app.Div().Class("pad-keys").Body(
			app.Range(keys).Slice(func(i int) app.UI {
				key := keys[i]
				return app.Button().Type("button").Text(key).Aria("label", keyNames[key]).OnClick(func(app.Context, app.Event) {
					r.State.keypad.Press(key)
				}, app.EventScope("key", key))
			}),
			app.Button().Type("button").ID("pad-next").Class("pad-next").Text("Next").OnClick(func(ctx app.Context, _ app.Event) { r.next(ctx, run) }, app.EventScope("next", run.First())),
		),
	)
}

// padKeys lists the keys in their order: those of fractions for inches.
func padKeys(u study.Units) []string {
	keys := []string{"7", "8", "9", model.BackKey, "4", "5", "6", model.SignKey, "1", "2", "3", model.PointKey}
	if u == study.Inch {
		return append(keys, model.SpaceKey, "0", model.FractKey)
	}
	return append(keys, "0")
}

// keyNames are what keys without a letter are called by those who hear the page.
var keyNames = map[string]string{
	model.BackKey: "Delete the last letter", model.SignKey: "Change the sign", model.PointKey: "Point",
	model.SpaceKey: "Space", model.FractKey: "Stroke of a fraction",
	"0": "0", "1": "1", "2": "2", "3": "3", "4": "4", "5": "5", "6": "6", "7": "7", "8": "8", "9": "9",
}

// padField shows a field. It can be typed by a keyboard too.
func (r *readings) padField(f model.ReadingField, label string) app.UI {
	k := &r.State.keypad
	class := "pad-field"
	if k.At == f {
		class += " current"
	}
	id := "pad-" + label
	return app.Div().Class(class).Body(
		app.Label().For(id).Text(label),
		app.Input().ID(id).Type("text").Attr("inputmode", "none").AutoComplete(false).Value(k.Texts[f]).
			OnFocus(func(app.Context, app.Event) { r.State.keypad.At = f }, app.EventScope(id)).
			OnInput(func(ctx app.Context, _ app.Event) { r.State.keypad.Texts[f] = ctx.JSSrc().Get("value").String() }, app.EventScope(id)),
	)
}

// next goes to the next field, and enters the row behind the last.
func (r *readings) next(ctx app.Context, run model.Run) {
	row, err := r.State.keypad.Next(r.Bench.numbers())
	r.State.fault = ""
	if err != nil {
		r.State.fault = plain(err)
		return
	}
	if row == nil {
		return
	}
	r.Bench.edit(ctx, func() error { return r.Bench.session().AddReading(run, row) })
	travel := r.Bench.document().Units.FromMillimetres(row.Travel)
	r.State.last = &travel
}
