package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// overlay is what lies over the page, if anything does.
type overlay uint8

const (
	nothingOver overlay = iota
	paletteOver
	keymapOver
	showOver
)

// cover lays something over the page, or takes it away where it lies there already.
func (p *Panels) cover(what overlay) func(app.Context) {
	return func(ctx app.Context) {
		if p.over == what {
			p.uncover(ctx)
			return
		}
		if p.over == nothingOver {
			p.back = app.Window().Get("document").Get("activeElement")
		}
		p.over = what
	}
}

// uncover takes away what lies over the page, and gives the keyboard back to what had it
// before.
func (p *Panels) uncover(app.Context) {
	p.over = nothingOver
	if p.back != nil && p.back.Truthy() {
		p.back.Call("focus")
	}
}
