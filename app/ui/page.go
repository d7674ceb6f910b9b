package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// Page is the root of the page: it has the desk and the drawing, and renders the panels
// anew whenever either has changed.
type Page struct {
	app.Compo

	caller  Caller
	kept    *kept
	desk    *model.Desk
	drawing *drawing
	version uint64
}

// New returns the page with the study on its desk that was open last, or the demo. The
// caller is nil on the server, which only renders.
func New(caller Caller) *Page {
	k := keepIn(browserStorage(), browserCopy())
	desk := model.NewDesk(k.first())
	return &Page{caller: caller, kept: k, desk: desk, drawing: newDrawing(desk)}
}

// OnMount has the drawing tell the page of what the hand does.
func (p *Page) OnMount(ctx app.Context) {
	p.drawing.edited = func() { p.edited(ctx) }
}

// edited brings the panels up to date with what was done on the stage.
func (p *Page) edited(ctx app.Context) { ctx.Dispatch(func(app.Context) { p.version++ }) }

// changed is called after any edit of the desk by a panel.
func (p *Page) changed(ctx app.Context) {
	p.drawing.request()
	p.edited(ctx)
}

// Render renders the panels.
func (p *Page) Render() app.UI {
	return &Panels{Desk: p.desk, Caller: p.caller, Changed: p.changed, Kept: p.kept, Drawing: p.drawing, Version: p.version}
}

// stand lets the stage come first: with all else the page would take half as long again
// to be of use.
func (p *Panels) stand(ctx app.Context) {
	afterFrame(func() {
		ctx.Dispatch(func(ctx app.Context) {
			p.stands = true
			p.Kept.start(ctx, p)
			p.wake(ctx)
		})
		sayStanding()
	})
}

// stage is the car and its curves, with the cars' key beneath; nil where there is no
// screen.
func (p *Panels) stage() app.UI {
	if p.Drawing == nil {
		return nothing()
	}
	return app.Section().Class("sheet").ID("sheet").Aria("label", "Drawing sheet").Body(
		toolLine{p, p.Desk, &p.Drawing.play}.line(),
		&Sheet{Drawing: p.Drawing},
		app.If(p.stands, func() app.UI {
			return &why{Bench: p.bench(), State: &p.whying, Version: p.Version}
		}).Else(func() app.UI { return whySection("why stale") }),
		only(p.Drawing.problem != "", func() app.UI {
			return app.P().Class("problem").ID("problem").Role("alert").Text(p.Drawing.problem)
		}),
		only(p.stands, p.titleBlock),
	)
}

// strip is the key of the stage; nil where there is none.
func (p *Panels) strip() app.UI {
	if p.Drawing == nil {
		return nothing()
	}
	return &Strip{Desk: p.Desk, Changed: p.Changed, Refer: p.refer, After: p.soon}
}

// titleBlock is the block at the foot of the sheet on paper, as every drawing has one.
func (p *Panels) titleBlock() app.UI {
	fields := p.Desk.TitleBlock()
	return app.Div().Class("title-block").Body(
		app.Dl().Body(app.Range(fields).Slice(func(i int) app.UI {
			return app.Div().Body(app.Dt().Text(fields[i].Label), app.Dd().Text(fields[i].Value))
		})),
		app.P().Class("caution").Text(p.Desk.Caution()),
	)
}
