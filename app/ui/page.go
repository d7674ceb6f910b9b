package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
)

// Page is the whole page: head, sheet, table of candidates and panels.
type Page struct {
	app.Compo

	caller Caller
	desk   *model.Desk
}

// demo is the study of a first start.
const demo = "double-wishbone-rack"

// newPage returns the page with the demo on its desk.
func newPage(caller Caller) *Page {
	t, _ := study.TemplateByKey(demo)
	return &Page{caller: caller, desk: model.NewDesk(t.Document())}
}

// changed is called after any edit of the desk, by the sheet as by the panels.
func (p *Page) changed(ctx app.Context) { ctx.Update() }

// Render lays the parts of the page out.
func (p *Page) Render() app.UI {
	return app.Div().Class("page").Body(
		app.Header().Class("top").Body(
			app.H1().Text("Toewright"),
			&Status{Caller: p.caller},
		),
		&Sheet{Desk: p.desk},
		&Strip{Desk: p.desk, Changed: p.changed},
		&Panels{Desk: p.desk, Caller: p.caller, Changed: p.changed},
	)
}
