package ui

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/internal/study"
)

// pointsTable takes points from a table that is pasted, dropped or chosen as a file.
type pointsTable struct {
	app.Compo
	Bench bench

	text  string
	fault string
}

// Render shows the place for the table.
func (t *pointsTable) Render() app.UI {
	return app.Details().Class("block").Body(
		app.Summary().Text("Points from a table (CSV)"),
		app.P().Class("note").Text("Columns point, x, y, z and if wanted side, in any order, under a header that may state the unit: x (in). Separated by comma, semicolon or tab, as spreadsheets copy them. A file can be dropped on the field."),
		app.Label().For("points-text").Class("unseen").Text("Table of points"),
		app.Textarea().ID("points-text").Rows(6).Spellcheck(false).Text(t.text).OnChange(func(ctx app.Context, _ app.Event) {
			t.text = ctx.JSSrc().Get("value").String()
		}).OnDragOver(func(_ app.Context, e app.Event) { e.PreventDefault() }).OnDrop(t.drop),
		app.Div().Class("deeds").Body(
			app.Label().Class("file").For("points-file").Text("Choose a file"),
			app.Input().Type("file").ID("points-file").Class("unseen").Accept(".csv,.txt,text/csv,text/plain").OnChange(func(ctx app.Context, _ app.Event) {
				readFile(t.Bench.Lasting, ctx.JSSrc(), t.read)
			}),
			button("Take these points", t.take).ID("take-points"),
			button("Save the points as a table", func(app.Context, app.Event) {
				download(fileName(t.Bench.document().Name)+"-points.csv", "text/csv", study.FormatPoints(t.Bench.document()))
			}),
		),
		app.If(t.fault != "", func() app.UI { return app.P().Class("problem").Role("alert").Text(t.fault) }),
	)
}

func (t *pointsTable) drop(ctx app.Context, e app.Event) {
	e.PreventDefault()
	readFile(t.Bench.Lasting, e.Get("dataTransfer"), t.read)
}

// read takes the points of a file.
func (t *pointsTable) read(ctx app.Context, _ string, text []byte, err error) {
	if err != nil {
		t.fault = plain(err)
		return
	}
	t.text = string(text)
	t.take(ctx, app.Event{})
}

// take moves the points of the car to those of the table.
func (t *pointsTable) take(ctx app.Context, _ app.Event) {
	points, err := study.ParsePoints([]byte(t.text), t.Bench.document())
	if err != nil {
		t.fault = "Nothing was taken: " + plain(err)
		return
	}
	t.fault = ""
	t.Bench.undoable(ctx, fmt.Sprintf("%d points are taken from the table.", len(points)), func() error {
		return t.Bench.session().SetPoints("points from a table", points)
	})
}
