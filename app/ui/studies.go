package ui

import (
	"fmt"
	"strings"
	"time"

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

// OnMount asks the browser what it has promised.
func (s *studies) OnMount(ctx app.Context) { s.kept().promise(s.Panels.lasting, false) }

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
			return s.Bench.change(ctx, func() error {
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
		only(s.kept().fault != "", func() app.UI {
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
			button("Save all studies", s.backUp).ID("save-all").Title("All studies in one file, as they stand now; Open a file takes it"),
		),
		only(s.fault != "", func() app.UI { return app.P().ID("file-fault").Class("problem").Role("alert").Text(s.fault) }),
		only(s.link != "", func() app.UI {
			return app.Div().Class("field").Body(
				app.Label().For("link").Text("The link carries the whole study; nothing of it goes to a server."),
				app.Input().ID("link").Type("text").Class("wide").ReadOnly(true).Value(s.link),
			)
		}),
		app.P().ID("keeping").Class("note").Text(s.kept().lasting()+" A file is the way to another device, and the safest copy."),
		s.Panels.host.install(),
	)
}

// choose opens the file that was chosen, unless it is damaged.
func (s *studies) choose(ctx app.Context, _ app.Event) {
	readFile(s.Bench.Lasting, ctx.JSSrc(), func(ctx app.Context, name string, text []byte, err error) {
		var d *study.Document
		switch {
		case err != nil:
		case store.IsBackup(text):
			err = s.bring(ctx, name, text)
		default:
			d, err = study.Decode(text)
		}
		s.fault = ""
		if err != nil {
			s.fault = name + " was not opened, and nothing has changed: " + inFile(err) + "."
		}
		if d == nil {
			return
		}
		s.kept().put(ctx, s.Panels, d)
		s.Panels.closeMenu()
		s.Bench.Say(ctx, name+" is open.", nil)
	})
}

// backUp saves all studies as one file.
func (s *studies) backUp(ctx app.Context, _ app.Event) {
	s.kept().save(ctx, s.Panels)
	file, n, left, err := s.kept().store.Backup()
	if err != nil {
		s.tell(ctx, err)
		return
	}
	said := fmt.Sprintf("One file of all studies, %d, is on its way to your downloads. ", n) + caution
	if len(left) > 0 {
		said += " Not in it, as they cannot be opened: " + strings.Join(left, ", ") + "."
	}
	download("toewright-studies-"+time.Now().Format(time.DateOnly)+".json", "application/json", file)
	s.Bench.Say(ctx, said, nil)
}

// bring keeps the studies of a file of all studies beside those that are kept.
func (s *studies) bring(ctx app.Context, name string, file []byte) error {
	brought, there, err := s.kept().store.Bring(file)
	if err != nil {
		return err
	}
	s.kept().copying.flush(s.Bench.Lasting)
	s.Bench.Say(ctx, fmt.Sprintf("Of %s, studies that came beside yours: %d; that were here already: %d.", name, brought, there), nil)
	return nil
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
