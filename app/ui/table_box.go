package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// tableBox takes a table that is pasted, dropped or chosen as a file.
type tableBox struct {
	app.Compo
	Lasting app.Context
	ID      string
	Title   string
	About   string                                               // what columns the table has
	Take    func(ctx app.Context, text []byte) ([]string, error) // says what was taken from where, if there is more to say
	Save    func()                                               // downloads what is there as a table; nil for none

	text  string
	told  []string // what the last table that was taken left
	fault string
}

func (t *tableBox) textID() string { return t.ID + "-text" }

// Render shows the place for the table, with what was half typed before the page was loaded
// anew.
func (t *tableBox) Render() app.UI {
	t.text = halfTyped.or(t.textID(), t.text)
	return app.Details().Class("block").Body(
		app.Summary().Text(t.Title),
		app.P().Class("note").Text(t.About+" Separated by comma, semicolon or tab, as spreadsheets copy them; numbers with a decimal comma go with semicolon or tab. A file can be dropped on the field."),
		app.Label().For(t.textID()).Class("unseen").Text(t.Title),
		app.Textarea().ID(t.textID()).Rows(6).Spellcheck(false).Text(t.text).OnInput(func(ctx app.Context, _ app.Event) {
			t.text = ctx.JSSrc().Get("value").String()
			halfTyped.set(t.textID(), t.text, "")
			ctx.PreventUpdate()
		}).OnDragOver(func(_ app.Context, e app.Event) { e.PreventDefault() }).OnDrop(t.drop),
		app.Div().Class("deeds").Body(
			app.Label().Class("file").For(t.ID+"-file").Text("Choose a file"),
			app.Input().Type("file").ID(t.ID+"-file").Class("unseen").Accept(".csv,.txt,text/csv,text/plain").OnChange(func(ctx app.Context, _ app.Event) {
				readFile(t.Lasting, ctx.JSSrc(), t.read)
			}),
			button("Take the table", func(ctx app.Context, _ app.Event) { t.take(ctx) }).ID(t.ID+"-take"),
			only(t.Save != nil, func() app.UI {
				return button("Save as a table", func(app.Context, app.Event) { t.Save() })
			}),
		),
		only(t.fault != "", func() app.UI { return app.P().Class("problem").Role("alert").Text(t.fault) }),
		app.Range(t.told).Slice(func(i int) app.UI { return app.P().Class("note").Text(t.told[i]) }),
	)
}

func (t *tableBox) drop(_ app.Context, e app.Event) {
	e.PreventDefault()
	readFile(t.Lasting, e.Get("dataTransfer"), t.read)
}

// read takes the table of a file.
func (t *tableBox) read(ctx app.Context, _ string, text []byte, err error) {
	if err != nil {
		t.fault = plain(err)
		return
	}
	t.text = string(text)
	halfTyped.drop(t.textID())
	t.take(ctx)
}

func (t *tableBox) take(ctx app.Context) {
	t.fault, t.told = "", nil
	told, err := t.Take(ctx, []byte(t.text))
	t.told = told
	if err == nil {
		takenOver++
		halfTyped.drop(t.textID())
	} else {
		t.fault = "Nothing was taken: " + plain(err)
	}
}
