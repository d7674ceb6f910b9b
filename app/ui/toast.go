package ui

import (
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// toast is the last thing that was said, until it fades.
type toast struct {
	text   string
	undo   func(app.Context) // undoes what was said; nil where it cannot be
	number int
}

// toastTime is how long what was said is shown.
const toastTime = 8 * time.Second

// say tells the user something, perhaps with a way to undo it.
func (p *Panels) say(_ app.Context, text string, undo func(app.Context)) {
	p.toast = toast{text, undo, p.toast.number + 1}
	p.Desk.Said = text
	number := p.toast.number
	p.after(toastTime, func(app.Context) {
		if p.toast.number == number {
			p.toast.text = ""
		}
	})
}

// render shows what was said. The box is always there, so that what appears in it is
// read aloud.
func (t *toast) render() app.UI {
	class := "toast"
	if t.text == "" {
		class = "toast empty"
	}
	undo, number := t.undo, t.number
	return app.Div().ID("toast").Class(class).Role("status").Body(
		app.If(t.text != "", func() app.UI { return app.Span().Text(t.text) }),
		app.If(t.text != "" && undo != nil, func() app.UI {
			return button("Undo", func(ctx app.Context, _ app.Event) { undo(ctx) }, number).ID("toast-undo")
		}),
	)
}
