package ui

import (
	"cmp"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// studyMenu is the study's name, which opens what is done with studies as a whole, and
// whether the study is kept.
func (p *Panels) studyMenu(b bench) app.UI {
	return app.Div().Class("study-name").Body(
		app.Button().Type("button").ID("study-menu").Aria("expanded", p.menu).Aria("controls", "study-box").
			OnClick(func(app.Context, app.Event) { p.menu = !p.menu }).
			Body(app.Strong().Text(cmp.Or(b.document().Name, "study without a name")), app.Span().Aria("hidden", true).Text(" ▾")),
		app.Span().ID("kept").Class("kept").Aria("live", "polite").Text(p.Kept.state(p)),
		app.If(p.menu, func() app.UI {
			return app.Div().ID("study-box").Class("menu-box").OnKeyDown(p.menuKey).Body(&studies{Bench: b, Panels: p})
		}),
	)
}

// menuKey closes the menu by Escape, and gives the keyboard back to its button.
func (p *Panels) menuKey(ctx app.Context, e app.Event) {
	if e.Get("key").String() != "Escape" {
		ctx.PreventUpdate()
		return
	}
	p.menu = false
	focus("study-menu")
}
