package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// field is a text field for one value. What cannot be read stays in it, with the
// reason beneath.
type field struct {
	app.Compo

	ID, Label, Unit string
	Tag             string // stands beside the label; says where the value comes from
	Hidden          bool   // the label is for screen readers only
	Value           string // as it is written while nobody types
	Wide            bool
	Disabled        bool
	Set             func(app.Context, string) error
	Step            func(app.Context, int) // steps by an arrow key, ten at a time with Shift; may be nil

	draft   string
	problem string
	stood   string // Value when the draft was refused
	taken   int    // takenOver when the draft was refused
}

// takenOver counts how often numbers were taken over whole, with a study that was opened,
// a table or an earlier revision: what a field had refused before is of no account then.
var takenOver int

// Render shows the field with its label, its unit and what is wrong with it.
func (f *field) Render() app.UI {
	value := f.Value
	f.forget()
	typed, half := halfTyped.texts[f.ID]
	switch {
	case f.problem != "":
		value = f.draft
	case half:
		value = typed
	}
	return app.Div().Class("field").Body(
		app.Label().For(f.ID).Class(when(f.Hidden, "unseen", "")).Body(app.Text(f.Label), only(f.Value != "", func() app.UI { return tag(f.Tag) })),
		app.Span().Class("field-box").Body(
			f.input(value),
			only(f.Unit != "", func() app.UI { return app.Span().Class("unit").Text(f.Unit) }),
		),
		only(f.problem != "", func() app.UI {
			return app.P().ID(f.problemID()).Class("problem").Role("alert").Text(f.problem)
		}),
	)
}

// input is the field alone. It points to the problem beneath only while there is one.
func (f *field) input(value string) app.UI {
	input := app.Input().ID(f.ID).Type("text").Class(when(f.Wide, "wide", "number")).Value(value).Disabled(f.Disabled).
		AutoComplete(false).Spellcheck(false).Aria("invalid", f.problem != "").
		OnInput(f.typing, app.EventScope(f.ID, f.Value)).OnChange(f.changed).OnKeyDown(f.key).OnBlur(f.leave)
	if f.problem != "" {
		input = input.Aria("describedby", f.problemID())
	}
	return input
}

func (f *field) problemID() string { return f.ID + "-problem" }

// typing keeps what is being typed.
func (f *field) typing(ctx app.Context, _ app.Event) {
	halfTyped.set(f.ID, ctx.JSSrc().Get("value").String(), f.Value)
	ctx.PreventUpdate()
}

// changed reads what was typed. What is refused is still being typed.
func (f *field) changed(ctx app.Context, _ app.Event) {
	draft := ctx.JSSrc().Get("value").String()
	err := f.Set(ctx, draft)
	if draft == f.Value {
		err = nil // what stands there is no slip, whatever it is
	}
	f.judge(draft, err)
	if err == nil {
		halfTyped.drop(f.ID)
	}
}

// leave reads what was half typed before the page was loaded anew: to the browser the text is
// the field's own, which nobody has changed.
func (f *field) leave(ctx app.Context, e app.Event) {
	if halfTyped.found[f.ID] {
		f.changed(ctx, e)
		return
	}
	ctx.PreventUpdate()
}

// judge keeps what was typed, with the reason if it was refused.
func (f *field) judge(draft string, err error) {
	f.draft, f.problem = draft, ""
	if err != nil {
		f.problem, f.stood, f.taken = plain(err), f.Value, takenOver
	}
}

// forget drops what was refused once the value is another, or may be.
func (f *field) forget() {
	if f.Value != f.stood || f.taken != takenOver {
		f.problem = ""
	}
}

// key steps the value, or puts back what stood there.
func (f *field) key(ctx app.Context, e app.Event) {
	step := map[string]int{"ArrowUp": 1, "ArrowDown": -1}[e.Get("key").String()]
	switch {
	case e.Get("key").String() == "Enter":
		f.leave(ctx, e)
	case e.Get("key").String() == "Escape":
		f.problem = ""
		halfTyped.drop(f.ID)
		ctx.JSSrc().Set("value", f.Value)
	case step != 0 && f.Step != nil:
		e.PreventDefault()
		if e.Get("shiftKey").Bool() {
			step *= 10
		}
		f.problem = ""
		f.Step(ctx, step)
	default:
		ctx.PreventUpdate()
	}
}
