package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// head is at hand whichever step is open: the study, the steps, undo and redo, and how
// numbers are written.
func (p *Panels) head(b bench) app.UI {
	return app.Header().Class("head").Body(
		app.H1().Class("unseen").Text("Toewright"),
		app.Div().Class("study-head").Body(
			app.Raw(pageMark),
			only(p.stands, func() app.UI { return p.studyMenu(b) }),
			only(p.stands, func() app.UI {
				return app.Span().Class("kept-beside").Aria("hidden", true).Text(p.Kept.state(p))
			}),
		),
		p.stepList(),
		only(p.stands, func() app.UI {
			return app.Div().Class("head-tools").Body(
				backward("undo", "Undo", undoIcon, p.Desk.Session.CanUndo(), p.undo),
				backward("redo", "Redo", redoIcon, p.Desk.Session.CanRedo(), p.redo),
				p.units(b),
				app.Button().Type("button").ID("commands").Class("bare").Text("Commands").Title("Commands, Ctrl K").
					OnClick(func(ctx app.Context, _ app.Event) { p.cover(paletteOver)(ctx) }),
			)
		}),
	)
}

// backward is the button that goes one step back or forward, and says which.
func backward(id, word, path, label string, do func(app.Context)) app.UI {
	title := word + " " + label
	if label == "" {
		title = "nothing to " + id
	}
	return app.Button().Type("button").ID(id).Class("bare").Title(title).Aria("label", title).Disabled(label == "").
		OnClick(func(ctx app.Context, _ app.Event) { do(ctx) }).Body(icon(path))
}

func (p *Panels) undo(ctx app.Context) {
	wanted := p.Desk.Session.CanUndo()
	switch label := p.Desk.Session.Undo(); {
	case label != "":
		p.say(ctx, "Undone: "+label+".", nil)
		p.Changed(ctx)
	case wanted != "":
		p.say(ctx, "What was before "+wanted+" cannot be read any more, and nothing has changed. What is kept stands in the study's menu, under History.", nil)
	}
}

func (p *Panels) redo(ctx app.Context) {
	if label := p.Desk.Session.Redo(); label != "" {
		p.say(ctx, "Done again: "+label+".", nil)
		p.Changed(ctx)
	}
}
