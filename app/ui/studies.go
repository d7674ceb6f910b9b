package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/store"
	"toewright/internal/study"
)

// studies lists what is kept, opens and saves files, and makes links.
type studies struct {
	app.Compo
	Bench  bench
	Panels *Panels

	fault string // why a file was refused
	link  string
}

// Render shows the open study, then the others.
func (s *studies) Render() app.UI {
	return app.Div().Class("studies").Body(
		s.open(),
		s.files(),
		s.list(),
		&history{Bench: s.Bench, Panels: s.Panels},
	)
}

func (s *studies) kept() *kept { return s.Panels.Kept }

// open shows the fields of the open study's title block.
func (s *studies) open() app.UI {
	d := s.Bench.document()
	text := func(id, label, value string, put func(*study.Document, string)) app.UI {
		return &field{ID: id, Label: label, Wide: true, Value: value, Set: func(ctx app.Context, text string) error {
			return s.Bench.edit(ctx, func() error {
				return s.Bench.session().Edit(label, "", func(d *study.Document) { put(d, text) })
			})
		}}
	}
	return app.Section().Class("block").Body(
		app.H2().Text("This study"),
		text("study-name", "Name", d.Name, func(d *study.Document, t string) { d.Name = t }),
		app.Div().Class("row").Body(
			text("study-revision", "Revision", d.Revision, func(d *study.Document, t string) { d.Revision = t }),
			text("study-date", "Date", d.Date, func(d *study.Document, t string) { d.Date = t }),
		),
		app.If(s.kept().fault != "", func() app.UI {
			return app.P().Class("problem").Role("alert").Text("Not kept: " + s.kept().fault + ".")
		}),
	)
}

// files opens and saves files and makes links.
func (s *studies) files() app.UI {
	return app.Section().Class("block").Body(
		app.H2().Text("Files and links"),
		app.Div().Class("deeds").Body(
			app.Label().Class("file").For("open-file").Text("Open a file"),
			app.Input().Type("file").ID("open-file").Class("unseen").Accept(".json,application/json").OnChange(s.choose),
			button("Save as a file", s.save).ID("save-file"),
			button("Make a link", s.share).ID("make-link"),
		),
		app.If(s.fault != "", func() app.UI { return app.P().ID("file-fault").Class("problem").Role("alert").Text(s.fault) }),
		app.If(s.link != "", func() app.UI {
			return app.Div().Class("field").Body(
				app.Label().For("link").Text("The link carries the whole study; nothing of it goes to a server."),
				app.Input().ID("link").Type("text").Class("wide").ReadOnly(true).Value(s.link),
			)
		}),
		app.P().Class("note").Text("Studies are kept in this browser on this device. A file is the way to another one, and the safest copy."),
		s.Panels.host.install(),
	)
}

// choose opens the file that was chosen, unless it is damaged.
func (s *studies) choose(ctx app.Context, _ app.Event) {
	readFile(s.Bench.Lasting, ctx.JSSrc(), func(ctx app.Context, name string, text []byte, err error) {
		var d *study.Document
		if err == nil {
			d, err = study.Decode(text)
		}
		if err != nil {
			s.fault = name + " was not opened, and nothing has changed: " + inFile(err) + "."
			return
		}
		s.fault = ""
		s.kept().put(ctx, s.Panels, d)
		s.Panels.closeMenu()
		s.Bench.Say(ctx, name+" is open.", nil)
	})
}

func (s *studies) save(ctx app.Context, _ app.Event) { s.Panels.saveFile(ctx) }

// share makes a link and puts it on the clipboard, if the browser lets it.
func (s *studies) share(ctx app.Context, _ app.Event) {
	fragment, err := store.Link(s.Bench.document())
	if err != nil {
		s.Bench.Say(ctx, plain(err), nil)
		return
	}
	address := *ctx.Page().URL()
	address.Fragment = fragment
	s.link = address.String()
	copyText(s.Bench.Lasting, s.link, func(ctx app.Context) { s.Bench.Say(ctx, "The link is on the clipboard.", nil) })
}
