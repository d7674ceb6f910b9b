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

	tab     string    // key of the panel that is open
	over    overlay   // what lies over the page
	back    app.Value // what had the keyboard before
	telling bool      // what the demo shows is told
	deaf    func()    // lets go of the keys
	// after does something later; it is a field so that a test need not wait.
	after   func(time.Duration, func(app.Context))
	lasting app.Context // of the column itself
	toast   toast
	host    host
	work
}

// tabs are the panels in the order of the work.
var tabs = []struct{ key, text string }{
	{"candidates", "Candidates"},
	{"find", "Find"},
	{"car", "My car"},
	{"readings", "Readings"},
	{"map", "Map"},
	{"shelf", "Shelf"},
	{"forge", "Before you forge"},
	{"sheet", "Sheet"},
	{"studies", "Studies"},
}

// OnInit opens the first panel.
func (p *Panels) OnInit() { p.tab = tabs[0].key }

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

// Render shows what is always at hand, the tabs and the open panel.
func (p *Panels) Render() app.UI {
	b := p.bench()
	return app.Section().Class("panels").Aria("label", "Panels").Body(
		p.tools(b),
		p.Kept.offer(p),
		p.host.offer(p),
		p.toast.render(),
		app.Div().Class("panel").ID("panel").Role("tabpanel").Aria("labelledby", "tab-"+p.tab).Body(p.panel(b)),
		p.tabList(),
		app.If(p.over == paletteOver, func() app.UI { return &palette{Commands: p.commands(b), Close: p.uncover} }),
		app.If(p.over == keymapOver, func() app.UI { return &keymap{Close: p.uncover} }),
	)
}

// panel is the open one.
func (p *Panels) panel(b bench) app.UI {
	switch p.tab {
	case "find":
		return &find{Bench: b, State: &p.finding}
	case "readings":
		return &readings{Bench: b, State: &p.reading, Typed: func() { p.Kept.noteDraft(p) }}
	case "sheet":
		return &benchSheet{Bench: b, State: &p.sheeting, Series: &p.forging}
	case "map":
		return &mapPanel{Bench: b, State: &p.mapping, Frames: p.Frames}
	case "shelf":
		return &shelf{Bench: b, State: &p.shelving}
	case "forge":
		return &forge{Bench: b, State: &p.forging}
	case "car":
		return &car{Bench: b, Panels: p}
	case "studies":
		return &studies{Bench: b, Panels: p}
	}
	return app.Div().Body(
		app.If(p.telling, func() app.UI {
			return &story{Bench: b, Open: p.show, Close: func(app.Context) { p.telling = false }}
		}),
		&candidates{Bench: b},
	)
}

// tabList is the row of tabs. Arrow keys go along it.
func (p *Panels) tabList() app.UI {
	return app.Div().Class("tabs").Role("tablist").Aria("label", "Panels").OnKeyDown(p.along).Body(
		app.Range(tabs).Slice(func(i int) app.UI {
			t := tabs[i]
			open := t.key == p.tab
			index := -1
			if open {
				index = 0
			}
			return app.Button().Type("button").ID("tab-"+t.key).Class("tab").Role("tab").TabIndex(index).
				Aria("selected", open).Aria("controls", "panel").Text(t.text).
				OnClick(func(ctx app.Context, _ app.Event) { p.show(ctx, t.key) }, app.EventScope(t.key))
		}),
	)
}

// show opens a panel, at the selected card if it has one.
func (p *Panels) show(ctx app.Context, tab string) {
	p.tab = tab
	p.Kept.note(p)
	ctx.Defer(func(app.Context) {
		toTop(".panel")
		reveal(".card.selected, .pad")
	})
}

// along opens the next or the previous panel by an arrow key.
func (p *Panels) along(ctx app.Context, e app.Event) {
	by := map[string]int{"ArrowRight": 1, "ArrowLeft": -1}[e.Get("key").String()]
	if by == 0 {
		ctx.PreventUpdate()
		return
	}
	e.PreventDefault()
	for i, t := range tabs {
		if t.key == p.tab {
			p.tab = tabs[(i+by+len(tabs))%len(tabs)].key
			break
		}
	}
	p.Kept.note(p)
	ctx.Defer(func(app.Context) { focus("tab-" + p.tab) })
}
