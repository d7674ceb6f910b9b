package ui

import (
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// Panels are all of the page: the head with the steps, the stage with the car and its curves, the
// panel of the step that is open, and the bottom line.
type Panels struct {
	app.Compo

	Desk    *model.Desk
	Caller  Caller
	Changed func(app.Context) // to be called after any edit of the desk
	Kept    *kept             // keeps the study
	Drawing *drawing          // of the stage; nil where there is no screen
	Version uint64            // of the desk, so that go-app renders them anew

	stands  bool              // the stage is on the screen: the rest of the page follows
	workers string            // what is known of the solver's workers
	at      spot              // what is open
	ways    map[string]string // that were open last, by their steps
	menu    string            // key of the dropdown that is open; "" for none
	over    overlay           // what lies over the page
	back    app.Value         // what had the keyboard before
	telling bool              // what the demo shows is told

	templating bool // the templates of new studies are shown

	deaf []func() // let go of keys and presses
	// after does something later; it is a field so that a test need not wait.
	after   func(time.Duration, func(app.Context))
	lasting app.Context // of the page itself
	message message
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
	p.deaf = append(p.deaf,
		listen("keydown", func(e app.Value) { p.key(ctx, e) }),
		listen("pointerdown", func(e app.Value) { p.pressed(ctx, e) }))
	p.stand(ctx)
}

// OnUpdate keeps the study if it was edited, here or on the sheet. On a busy machine it comes
// before OnMount, which waits its turn behind what was dispatched before.
func (p *Panels) OnUpdate(app.Context) {
	if p.after != nil {
		p.Kept.later(p)
	}
}

// soon does something later.
func (p *Panels) soon(in time.Duration, do func(app.Context)) { p.after(in, do) }

// OnDismount lets go of the window.
func (p *Panels) OnDismount() {
	p.Kept.stop()
	for _, let := range p.deaf {
		let()
	}
}

// bench is what the panels work on.
func (p *Panels) bench() bench {
	return bench{p.Desk, p.Caller, p.Changed, p.say, p.undo, p.lasting, &p.reading.fit, p.show, p.showCars}
}

// Render lays the parts of the page out.
func (p *Panels) Render() app.UI {
	b := p.bench()
	return app.Div().Class(p.class()).Body(
		p.head(b),
		p.stage(),
		p.strip(),
		p.side(b),
		p.foot(),
		only(p.stands, func() app.UI { return printed{p.Desk}.table() }),
		only(p.over == paletteOver, func() app.UI { return &palette{Commands: p.commands(b), Close: p.uncover} }),
		only(p.over == showOver, func() app.UI { return &show{Panels: p, Version: p.Version} }),
		only(p.over == keymapOver, func() app.UI { return &keymap{Close: p.uncover} }),
	)
}

// side is the column of the open step's panel.
func (p *Panels) side(b bench) app.UI {
	if !p.stands {
		return app.Main().Class("side panels").Aria("label", "Panel").Aria("busy", true)
	}
	return app.Main().Class("side panels").Aria("label", "Panel").Body(
		&panelEdge{},
		p.Kept.offer(p),
		p.host.offer(p),
		app.Div().Class("panel").ID("panel").Role("tabpanel").Aria("labelledby", "step-"+p.at.step).Body(
			only(p.telling && p.at.key() == "search", func() app.UI {
				return &story{Bench: b, Open: p.show, Close: func(app.Context) { p.telling = false }}
			}),
			p.wayList(),
			p.panel(b),
		),
	)
}

// class tells the styles which step is open, and what has the stage's room too. They do not
// ask for what is in the page: with that the browser styles all of it anew in every frame of a
// drag.
func (p *Panels) class() string {
	class, key := "page at-"+p.at.step, p.at.key()
	car := p.Desk.Selected()
	switch {
	case !p.stands:
	case key == "compare" && p.Desk.Session.Cars().Err == nil,
		key == "sheet" && car != nil && car.Err == nil:
		class += " whole-" + key
	}
	return class
}

// panel is what stands at the open place.
func (p *Panels) panel(b bench) app.UI {
	switch p.at.key() {
	case "tape":
		return &tape{Bench: b, State: &p.taping, Version: p.Version}
	case "points":
		return &car{Bench: b, Panels: p}
	case "readings":
		return &readings{Bench: b, State: &p.reading, Typed: p.typed, Habits: p.Kept.noteHabits}
	case "search":
		return &find{Bench: b, State: &p.finding, Asked: p.question(b, true), Frames: p.frames()}
	case "map":
		return &mapPanel{Bench: b, State: &p.mapping, Frames: p.frames(), Asked: p.question(b, false)}
	case "tradeoff":
		return &trade{Bench: b, State: &p.trading, Asked: p.question(b, false)}
	case "parts":
		return &shelf{Bench: b, State: &p.shelving, Asked: p.question(b, false)}
	case "sheet":
		return &benchSheet{Bench: b, State: &p.sheeting, Series: &p.forging, Making: &p.making}
	case "series":
		return &forge{Bench: b, State: &p.forging, Measured: &p.measuring, Page: &p.sheeting.page}
	}
	return &compare{Bench: b, State: &p.comparing}
}

// draw asks the stage for a picture; where there is none, for nothing.
func (p *Panels) draw() {
	if p.Drawing != nil {
		p.Drawing.request()
	}
}

// frames are those of the stage; nil where there is none.
func (p *Panels) frames() frames {
	if p.Drawing == nil {
		return nil
	}
	return p.Drawing
}

// question is what is asked in each way of Find.
func (p *Panels) question(b bench, open bool) *question {
	return &question{Bench: b, State: &p.asking, Open: open, After: p.soon}
}
