package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
)

// pad shows the fields of a row and big keys for them.
func (r *readings) pad() app.UI {
	keys := padKeys(r.Bench.numbers().Units)
	fault := r.State.keypad.Fault
	return app.Div().Class("pad").Body(
		app.Div().Class("pad-fields").Body(
			r.padField(model.TravelField, "Travel"), r.padField(model.LeftField, "Left"), r.padField(model.RightField, "Right"),
		),
		app.If(fault != "", func() app.UI { return app.P().ID("pad-fault").Class("problem").Role("alert").Text(sentence(fault)) }),
		app.Div().Class("pad-keys").Body(
			app.Range(keys).Slice(func(i int) app.UI {
				key := keys[i]
				return app.Button().Type("button").Text(key).Aria("label", keyNames[key]).OnClick(func(app.Context, app.Event) {
					r.typed(func(k *model.Keypad) { k.Press(key) })
				}, app.EventScope("key", key))
			}),
			app.Button().Type("button").ID("pad-next").Class("pad-next").Text("Next").OnClick(r.next),
		),
	)
}

// typed does something with the keypad, and has what is being typed kept.
func (r *readings) typed(do func(*model.Keypad)) {
	do(&r.State.keypad)
	r.Typed()
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

// padField shows a field. It can be typed by a keyboard too, which writes over a travel that
// is only proposed.
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
			OnFocus(func(ctx app.Context, _ app.Event) {
				r.typed(func(k *model.Keypad) { k.Go(f) })
				if f == model.TravelField && !k.Typed {
					ctx.JSSrc().Call("select")
				}
			}, app.EventScope(id)).
			OnInput(func(ctx app.Context, _ app.Event) {
				r.typed(func(k *model.Keypad) { k.Type(f, ctx.JSSrc().Get("value").String()) })
			}, app.EventScope(id)),
	)
}

// next goes to the next field, and enters the row behind the last.
func (r *readings) next(ctx app.Context, _ app.Event) {
	entered := false
	r.typed(func(k *model.Keypad) { entered = k.Next(r.Bench.session()) })
	if entered {
		r.Bench.Changed(ctx)
	}
}
