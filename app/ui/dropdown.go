package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// dropdown is a button that opens a box beneath it. One is open at a time; Escape and a
// press outside close it.
func (p *Panels) dropdown(key string, label app.HTMLButton, content func() app.UI) app.UI {
	open := p.menu == key
	return app.Div().Class("dropdown").Body(
		label.Type("button").ID(key).Aria("expanded", open).Aria("controls", key+"-box").
			OnClick(func(app.Context, app.Event) { p.toggleMenu(key) }, app.EventScope(key)),
		only(open, func() app.UI {
			return app.Div().ID(key + "-box").Class("menu-box panels").Body(content())
		}),
	)
}

// toggleMenu opens the box of a dropdown, or closes it.
func (p *Panels) toggleMenu(key string) {
	if p.menu == key {
		key = ""
	}
	p.menu = key
}

// closeMenu closes the box that is open, and gives the keyboard back to its button.
func (p *Panels) closeMenu() {
	if p.menu != "" {
		focus(p.menu)
		p.menu = ""
	}
}

// pressed closes the box that is open, where a press is outside. It runs outside the
// page's goroutine.
func (p *Panels) pressed(ctx app.Context, e app.Value) {
	if p.menu == "" || e.Get("target").Call("closest", ".dropdown").Truthy() {
		return
	}
	ctx.Dispatch(func(app.Context) { p.menu = "" })
}
