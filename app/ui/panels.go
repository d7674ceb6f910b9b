package ui

import (
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// Panels is the column beside the sheet.
type Panels struct {
	app.Compo

	Desk    *model.Desk
	Caller  Caller
	Changed func(app.Context) // to be called after any edit of the desk
	Kept    *kept             // keeps the study
	Frames  frames            // of the sheet; nil where there is none

	at      spot              // what is open
	ways    map[string]string // that were open last, by their steps
	menu    bool              // the study's menu is open
	over    overlay           // what lies over the page
	back    app.Value         // what had the keyboard before
	telling bool              // what the demo shows is told
	deaf    func()            // lets go of the keys
	// after does something later; it is a field so that a test need not wait.
	after   func(time.Duration, func(app.Context))
	lasting app.Context // of the column itself
	toast   toast
	host    host
	work
}

// OnInit opens the step that shows what there is.
func (p *Panels) OnInit() { p.open("find") }

// OnMount opens the study that was open last.
func (p *Panels) OnMount(ctx app.Context) {
	p.lasting = ctx
	if p.after == nil {
		p.after = ctx.After
	}
	p.deaf = listen("keydown", func(e app.Value) { p.key(ctx, e) })
	p.Kept.start(ctx, p)
}

// OnUpdate keeps the study if it was edited, here or on the sheet.
func (p *Panels) OnUpdate(app.Context) { p.Kept.later(p) }

// OnDismount lets go of the window.
func (p *Panels) OnDismount() {
	p.Kept.stop()
	if p.deaf != nil {
		p.deaf()
	}
}

// bench is what the panels work on.
func (p *Panels) bench() bench {
	return bench{p.Desk, p.Caller, p.Changed, p.say, p.undo, p.lasting, &p.reading.fit, p.show}
}

// Render shows what is always at hand, the steps and the panel of the open one.
func (p *Panels) Render() app.UI {
	b := p.bench()
	return app.Section().Class("panels").Aria("label", "Panels").Body(
		p.tools(b),
		p.Kept.offer(p),
		p.host.offer(p),
		p.toast.render(),
		app.Div().Class("panel").ID("panel").Role("tabpanel").Aria("labelledby", "step-"+p.at.step).Body(p.wayList(), p.panel(b)),
		p.stepList(),
		app.If(p.over == paletteOver, func() app.UI { return &palette{Commands: p.commands(b), Close: p.uncover} }),
		app.If(p.over == keymapOver, func() app.UI { return &keymap{Close: p.uncover} }),
	)
}

// panel is what stands at the open place.
func (p *Panels) panel(b bench) app.UI {
	switch p.at.key() {
	case "search":
		return &find{Bench: b, State: &p.finding, Asked: p.question(b, true)}
	case "readings":
		return &readings{Bench: b, State: &p.reading, Typed: func() { p.Kept.noteDraft(p) }, Habits: p.Kept.noteHabits}
	case "sheet":
		return &benchSheet{Bench: b, State: &p.sheeting, Series: &p.forging}
	case "map":
		return &mapPanel{Bench: b, State: &p.mapping, Frames: p.Frames, Asked: p.question(b, false)}
	case "tradeoff":
		return &trade{Bench: b, State: &p.trading, Asked: p.question(b, false)}
	case "parts":
		return &shelf{Bench: b, State: &p.shelving, Asked: p.question(b, false)}
	case "series":
		return &forge{Bench: b, State: &p.forging}
	case "car":
		return &car{Bench: b, Panels: p}
	}
	return app.Div().Body(
		app.If(p.telling, func() app.UI {
			return &story{Bench: b, Open: p.show, Close: func(app.Context) { p.telling = false }}
		}),
		&compare{Bench: b, State: &p.comparing},
	)
}

// question is what is asked in each way of Find.
func (p *Panels) question(b bench, open bool) *question {
	return &question{Bench: b, State: &p.asking, Open: open, After: p.after}
}
