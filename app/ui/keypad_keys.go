package ui

import (
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// listen takes in what keyboards, and gauges that type as they do, press in the fields of the
// row, and which field the reader goes to. All of it goes through the keypad in its order,
// however fast it comes: a field that gets the keyboard only after Next would lose the first
// keys behind it.
func (r *readings) listen(ctx app.Context) {
	keys := listen("keydown", func(e app.Value) {
		target := e.Get("target")
		if _, ok := padField(target); !ok {
			return
		}
		if do := r.pressed(stroke(e), e.Get("key").String(), target); do != nil {
			e.Call("preventDefault") // at once; what the key does waits for the page's goroutine
			r.take(ctx, do)
		}
	})
	fields := listen("focusin", func(e app.Value) {
		f, ok := padField(e.Get("target"))
		if !ok {
			return
		}
		e.Get("target").Call("select")
		if !r.leading {
			r.take(ctx, func(app.Context) {
				if r.State.keypad.At != f {
					r.State.keypad.Go(f)
					r.Typed()
				}
			})
		}
	})
	r.deaf = func() { keys(); fields() }
}

// padField returns the field of a row that an element is.
func padField(e app.Value) (model.ReadingField, bool) {
	id := e.Get("id").String()
	for f := range padLabels {
		if padID(f) == id {
			return f, true
		}
	}
	return 0, false
}

// take has something done on the page's goroutine, behind what came before.
func (r *readings) take(ctx app.Context, do func(app.Context)) {
	if r.pending = append(r.pending, do); len(r.pending) == 1 {
		ctx.Dispatch(r.takeIn)
	}
}

// takeIn does what the keys do that came in the meantime.
func (r *readings) takeIn(ctx app.Context) {
	keys := r.pending
	r.pending = nil
	for _, do := range keys {
		do(ctx)
	}
}

// pressed returns what a key does in a field; nil where that is the field's own matter.
func (r *readings) pressed(stroke, key string, field app.Value) func(app.Context) {
	switch {
	case stroke == "enter" || stroke == "tab" && field.Get("value").String() != "" && r.State.keypad.At != model.TravelField:
		return func(ctx app.Context) { r.next(ctx, app.Event{}) }
	case stroke == "escape" && r.State.keypad.Opened != nil:
		return r.press(func(k *model.Keypad) { k.Close(r.Bench.session()) })
	case stroke == "arrowup" || stroke == "arrowdown":
		return func(app.Context) { r.along(stroke == "arrowdown") }
	case strings.HasPrefix(stroke, "ctrl ") || strings.HasPrefix(stroke, "alt ") || !atEnd(field):
		return nil
	case stroke == "backspace" && !wholeChosen(field):
		return r.press(func(k *model.Keypad) { k.Press(model.BackKey) })
	case len([]rune(key)) == 1:
		return r.press(func(k *model.Keypad) { k.Press(typedKey(k, key)) })
	}
	return nil
}

func (r *readings) press(do func(*model.Keypad)) func(app.Context) {
	return func(app.Context) { r.typed(do) }
}

// typedKey returns the key of the keypad that stands for a letter. A minus sign is that of a
// number at its beginning alone: behind it, it parts a whole number from a fraction.
func typedKey(k *model.Keypad, key string) string {
	switch {
	case key == " ":
		return model.SpaceKey
	case key == "-" && (k.Fresh || k.Texts[k.At] == ""):
		return model.SignKey
	}
	return key
}

// atEnd reports whether what is typed comes behind the text of a field, or replaces it.
func atEnd(field app.Value) bool {
	return wholeChosen(field) || field.Get("selectionStart").Int() == len([]rune(field.Get("value").String()))
}

// wholeChosen reports whether all of a field's text is chosen.
func wholeChosen(field app.Value) bool {
	length := len([]rune(field.Get("value").String()))
	return length > 0 && field.Get("selectionStart").Int() == 0 && field.Get("selectionEnd").Int() == length
}

// along opens the row above or below the one that is typed.
func (r *readings) along(down bool) {
	k, d := &r.State.keypad, r.Bench.document()
	run := model.Runs(d)[k.Run]
	rows := run.Rows(d)
	at, replaced := r.place(run, rows)
	switch {
	case !down:
		at--
	case replaced:
		at++
	}
	if at < 0 || at >= len(rows) {
		r.typed(func(k *model.Keypad) { k.Close(r.Bench.session()) })
		return
	}
	f := k.At
	if f == model.StackField {
		f = model.LeftField
	}
	row := slices.Clone(rows)[at]
	r.typed(func(k *model.Keypad) { k.Open(r.Bench.session(), &row, f) })
}
