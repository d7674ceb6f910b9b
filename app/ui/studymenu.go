package ui

import (
	"cmp"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// studyMenu is the study's name, which opens what is done with studies as a whole.
func (p *Panels) studyMenu(b bench) app.UI {
	name := cmp.Or(b.document().Name, "study without a name")
	label := app.Button().Class("bare").Title(name).
		Body(app.Strong().Text(name), app.Span().Class("caret").Aria("hidden", true).Text("▾"))
	return p.dropdown("study-menu", label, func() app.UI {
		return app.Div().Body(p.elsewhere(), &studies{Bench: b, Panels: p})
	})
}

// elsewhere is what a phone has no room for outside the menu: the last message, and
// the commands.
func (p *Panels) elsewhere() app.UI {
	return app.Div().Class("elsewhere").Body(
		only(p.Desk.Said != "", func() app.UI { return app.P().Class("note").Text("Last message: " + p.Desk.Said) }),
		app.Div().Class("deeds").Body(
			button("Redo", func(ctx app.Context, _ app.Event) { p.redo(ctx) }, "menu").Disabled(p.Desk.Session.CanRedo() == ""),
			button("Commands", func(ctx app.Context, _ app.Event) {
				p.menu = ""
				p.cover(paletteOver)(ctx)
			}, "menu"),
		),
		cautionLine(),
	)
}
