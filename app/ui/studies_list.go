package ui

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/scene"
	"toewright/app/store"
	"toewright/internal/study"
)

// list shows the studies that are kept, and the bin.
func (s *studies) list() app.UI {
	entries, err := s.kept().store.List()
	if err != nil {
		return app.P().Class("problem").Text(plain(err))
	}
	var listed, binned []store.Entry
	for _, e := range entries {
		if e.Deleted {
			binned = append(binned, e)
		} else {
			listed = append(listed, e)
		}
	}
	return app.Section().Class("block").Body(
		app.H2().Text("Kept in this browser"),
		only(len(listed) == 0, func() app.UI {
			return app.P().Text("None yet. The demo is kept as your own study from your first change on.")
		}),
		app.Ul().Class("plain").ID("studies").Body(app.Range(listed).Slice(func(i int) app.UI { return s.row(&listed[i]) })),
		only(len(binned) > 0, func() app.UI { return s.bin(binned) }),
		s.Panels.templates(),
	)
}

// row shows one study.
func (s *studies) row(e *store.Entry) app.UI {
	open := e.ID == s.kept().keeper.ID()
	return app.Li().Class("study").Body(
		app.Div().Body(
			app.Strong().Text(e.Name),
			only(open, func() app.UI { return app.Span().Class("tag").Text("open") }),
			only(!e.Saved.IsZero(), func() app.UI {
				return app.Span().Class("note").Text(fmt.Sprintf("revision %d, %s", e.Version.Number, e.Saved.Local().Format("2 Jan 2006 15:04")))
			}),
		),
		only(e.Problem != nil, func() app.UI { return app.P().Class("problem").Text(plain(e.Problem)) }),
		only(len(e.Others) > 0, func() app.UI {
			return app.P().Class("warning").Text("Two tabs saved at once: the other's revision is in the history.")
		}),
		app.Div().Class("deeds").Body(
			button("Open", func(ctx app.Context, _ app.Event) { s.openKept(ctx, e.ID) }, e.ID).Disabled(open).Aria("label", "Open "+e.Name),
			button("Duplicate", func(ctx app.Context, _ app.Event) { s.duplicate(ctx, e.ID) }, e.ID).Aria("label", "Duplicate "+e.Name),
			button("Delete", func(ctx app.Context, _ app.Event) { s.remove(ctx, e.ID, e.Name) }, e.ID).Class("danger").Disabled(open || e.Problem != nil).Aria("label", "Delete "+e.Name),
		),
	)
}

func (s *studies) openKept(ctx app.Context, id store.ID) {
	s.kept().save(ctx, s.Panels)
	if err := s.kept().open(ctx, s.Panels, id); err != nil {
		s.tell(ctx, err)
		return
	}
	s.Panels.closeMenu()
}

func (s *studies) duplicate(ctx app.Context, id store.ID) {
	s.kept().save(ctx, s.Panels)
	_, err := s.kept().store.Duplicate(id)
	s.tell(ctx, err)
}

func (s *studies) remove(ctx app.Context, id store.ID, name string) {
	if err := s.kept().store.Delete(id); err != nil {
		s.tell(ctx, err)
		return
	}
	s.Bench.Say(ctx, name+" is in the bin.", func(ctx app.Context) { s.tell(ctx, s.kept().store.Restore(id)) })
}

// tell says what went wrong, if anything did.
func (s *studies) tell(ctx app.Context, err error) {
	if err != nil {
		s.Bench.Say(ctx, plain(err), nil)
	}
}

// bin lists the studies that were deleted.
func (s *studies) bin(list []store.Entry) app.UI {
	return app.Details().Class("block").Body(
		app.Summary().Text(fmt.Sprintf("Bin (%d)", len(list))),
		app.P().Class("note").Text("A template gives points, steering gear, wheel and alignment of an invented car of the kind, marked as such until you put your own in their place."),
		app.Ul().Class("plain").Body(app.Range(list).Slice(func(i int) app.UI {
			e := list[i]
			return app.Li().Class("study").Body(
				app.Text(e.Name),
				button("Take back", func(ctx app.Context, _ app.Event) { s.tell(ctx, s.kept().store.Restore(e.ID)) }, e.ID).Aria("label", "Take back "+e.Name),
			)
		})),
		button("Empty the bin for good", func(ctx app.Context, _ app.Event) { s.tell(ctx, s.kept().store.EmptyBin()) }).Class("danger"),
	)
}

// templates starts a study from the geometry of an invented car.
func (p *Panels) templates() app.UI {
	return app.Details().Class("block").Open(p.templating).On("toggle", func(ctx app.Context, _ app.Event) {
		p.templating = ctx.JSSrc().Get("open").Bool()
	}).Body(
		app.Summary().ID("new-study").Text("New study, starting from a template"),
		only(p.templating, func() app.UI {
			list := study.Templates()
			return app.Ul().Class("plain").Body(app.Range(list).Slice(func(i int) app.UI {
				return app.Li().Class("study").Body(
					app.Button().Type("button").ID("template-"+list[i].Key).Class("template").OnClick(func(ctx app.Context, _ app.Event) { p.begin(ctx, &list[i]) }, app.EventScope(list[i].Key)).
						Body(app.Raw(sketch(&list[i])), app.Text(list[i].Title)),
					app.P().Class("note").Text(list[i].Typical),
				)
			}))
		}),
	)
}

// begin opens a new study of a template's car, with no readings, parts and candidates, and
// gives the keyboard to its first cell.
func (p *Panels) begin(ctx app.Context, t *study.Template) {
	p.Kept.put(ctx, p, t.Start())
	p.templating = false
	p.closeMenu()
	p.show(ctx, "car")
	p.say(ctx, "A new study. Every number is the template's until you type your own.", nil)
	p.bench().keyboard(model.PointRows(p.Desk.Session.Document(), study.Left)[0].CellID(0))
}

// The size of the small picture of a template, in pixels.
const sketchWidth, sketchHeight = 192, 84

// sketches are the pictures that were drawn, by their templates' keys.
var sketches = map[string]string{}

// sketch draws a template's car by its own points.
func sketch(t *study.Template) string {
	text, ok := sketches[t.Key]
	if !ok {
		if design, err := t.Start().Design(); err == nil {
			text = scene.Sketch(design, sketchWidth, sketchHeight)
		}
		sketches[t.Key] = text
	}
	return text
}
