package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/store"
	"toewright/internal/study"
)

// pad shows big keys for the row that is typed.
func (r *readings) pad() app.UI {
	k := &r.State.keypad
	class := "pad-keys"
	if r.State.habits.LeftHanded {
		class += " left-handed"
	}
	next := app.Button().Type("button").ID("pad-next").OnClick(r.next).
		Body(app.Span().Text("Next"), app.Small().Text(k.Goes(r.Bench.session())))
	if !k.Done() {
		next = next.Class("primary")
	}
	keys := padKeys(r.Bench.numbers().Units, k.At)
	if len(keys) == mostKeys {
		class += " fractions"
	}
	return app.Div().Class("pad").Body(
		only(k.Fault != "", func() app.UI { return app.P().ID("pad-fault").Class("problem").Role("alert").Text(sentence(k.Fault)) }),
		app.Div().Class(class).Body(
			many(app.Range(keys).Slice(func(i int) app.UI { return r.key(keys[i]) })),
			button("Other hand", func(app.Context, app.Event) {
				r.habit(store.Habits{LeftHanded: !r.State.habits.LeftHanded, Fine: r.State.habits.Fine})
			}).ID("other-hand"),
			next,
		),
	)
}

// key is a key that types.
func (r *readings) key(key string) app.UI {
	text := key
	if key == model.BackKey {
		text = "Erase"
	}
	return app.Button().Type("button").DataSet("key", key).Text(text).Aria("label", keyNames[key]).OnClick(func(ctx app.Context, _ app.Event) {
		r.typed(func(k *model.Keypad) { k.Press(key) })
	}, app.EventScope("key", key))
}

// typed does something with the keypad, has what is being typed kept, and gives the keyboard
// to the field that is typed: a gauge that types goes on there.
func (r *readings) typed(do func(*model.Keypad)) {
	do(&r.State.keypad)
	r.Typed()
	if !r.leading {
		r.leading = true
		r.Bench.Lasting.Dispatch(func(ctx app.Context) { ctx.Defer(r.lead) })
	}
}

// lead gives the keyboard to the field that is typed now, and brings it into view.
func (r *readings) lead(app.Context) {
	focus(padID(r.State.keypad.At))
	reveal(".pad-input.current")
	r.leading = false
}

// mostKeys are the keys that type where fractions are wanted.
const mostKeys = 15

// padKeys lists the keys in their order: those of fractions where lengths in inches are typed
// that no dial shows.
func padKeys(u study.Units, f model.ReadingField) []string {
	keys := []string{"7", "8", "9", model.BackKey, "4", "5", "6", model.SignKey, "1", "2", "3", "0", model.PointKey}
	if u == study.Inch && (f == model.TravelField || f == model.StackField) {
		return append(keys, model.SpaceKey, model.FractKey)
	}
	return keys
}

// keyNames are what keys without a letter are called by those who hear the page.
var keyNames = map[string]string{
	model.BackKey: "Erase the last letter", model.SignKey: "Change the sign", model.PointKey: "Point",
	model.SpaceKey: "Space", model.FractKey: "Stroke of a fraction",
	"0": "0", "1": "1", "2": "2", "3": "3", "4": "4", "5": "5", "6": "6", "7": "7", "8": "8", "9": "9",
}

// padLabels are the fields by their names.
var padLabels = map[model.ReadingField]string{
	model.TravelField: "Travel", model.LeftField: "Left", model.RightField: "Right", model.StackField: "Stack",
}

func padID(f model.ReadingField) string { return "pad-" + padLabels[f] }

// padField shows a field of the row.
func (r *readings) padField(f model.ReadingField) app.UI {
	return app.Div().Class("pad-field").Body(
		app.Label().Class("unseen").For(padID(f)).Text(padLabels[f]),
		r.padInput(f),
	)
}

// padInput is the field alone. It can be typed by a keyboard too.
func (r *readings) padInput(f model.ReadingField) app.UI {
	k := &r.State.keypad
	class := "pad-input"
	if k.At == f {
		class += " current"
	}
	return app.Input().ID(padID(f)).Type("text").Class(class).Attr("inputmode", "none").AutoComplete(false).Value(k.Texts[f]).
		OnInput(func(ctx app.Context, _ app.Event) {
			text := ctx.JSSrc().Get("value").String()
			r.State.keypad.Type(f, text)
			r.Typed()
		}, app.EventScope(f))
}

// next goes to the next field, and enters the row behind the last.
func (r *readings) next(ctx app.Context, _ app.Event) {
	changed := false
	r.typed(func(k *model.Keypad) { changed = k.Next(r.Bench.session()) })
	if changed {
		r.Bench.Changed(ctx)
	}
}
