package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// Page is the whole page: head, sheet, table of candidates and panels.
type Page struct {
	app.Compo

	caller  Caller
	kept    *kept
	desk    *model.Desk
	drawing *drawing
	whying  whying
	lasting app.Context
	version uint64
	stands  bool // the sheet is on the screen: the rest of the page follows
}

// New returns the page with the study on its desk that was open last, or the demo. The
// caller is nil on the server, which only renders.
func New(caller Caller) *Page {
	k := keepIn(browserStorage(), browserCopy())
	desk := model.NewDesk(k.first())
	return &Page{caller: caller, kept: k, desk: desk, drawing: newDrawing(desk)}
}

// OnMount has the drawing tell the page of what the hand does, and lets the sheet come
// first: with all else the page would take half as long again to be of use.
func (p *Page) OnMount(ctx app.Context) {
	p.lasting = ctx
	p.drawing.edited = func() { p.edited(ctx) }
	afterFrame(func() {
		ctx.Dispatch(func(app.Context) { p.stands = true })
		sayStanding()
	})
}

// edited brings the panels up to date with what was done on the sheet.
func (p *Page) edited(ctx app.Context) { ctx.Dispatch(func(app.Context) { p.version++ }) }

// changed is called after any edit of the desk by a panel.
func (p *Page) changed(ctx app.Context) {
	p.drawing.request()
	p.edited(ctx)
}

// Render lays the parts of the page out.
func (p *Page) Render() app.UI {
	return app.Div().Class("page").Body(
		app.Header().Class("top").Body(
			app.H1().Text("Toewright"),
			app.P().Class("motto").Text("Toe through wheel travel, and the steering arm that holds it."),
			app.If(p.stands, func() app.UI { return &Status{Caller: p.caller} }),
		),
		app.Main().Class("sheet").ID("sheet").Aria("label", "Drawing sheet").Body(
			&controls{Drawing: p.drawing, Changed: p.changed},
			&Sheet{Drawing: p.drawing},
			app.If(p.stands, func() app.UI {
				return &why{Desk: p.desk, Caller: p.caller, Changed: p.changed, Lasting: p.lasting, State: &p.whying, Version: p.version}
			}),
			app.P().Class("said").ID("said").Role("status").Aria("live", "polite").Text(p.desk.Said),
			app.If(p.drawing.problem != "", func() app.UI {
				return app.P().Class("problem").ID("problem").Role("alert").Text(p.drawing.problem)
			}),
			&titleBlock{Desk: p.desk, Version: p.version},
		),
		&Strip{Desk: p.desk, Changed: p.changed},
		app.If(p.stands, func() app.UI { return &printed{Desk: p.desk, Version: p.version} }),
		app.If(p.stands, func() app.UI {
			return &Panels{Desk: p.desk, Kept: p.kept, Caller: p.caller, Changed: p.changed, Frames: p.drawing}
		}).Else(func() app.UI { return app.Section().Class("panels").Aria("label", "Panels").Aria("busy", true) }),
	)
}
