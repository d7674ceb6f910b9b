package ui

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// command is something that can be done from anywhere on the page.
type command struct {
	name string
	keys string // that do it, "" for none
	do   func(app.Context)
}

// palette finds a command by words.
type palette struct {
	app.Compo
	Commands []command
	Close    func(app.Context)

	text string
	at   int
}

// OnMount gives the keyboard to the field.
func (p *palette) OnMount(ctx app.Context) {
	ctx.Defer(func(app.Context) { focus("palette-text") })
}

// Render shows the field and the commands that have its words.
func (p *palette) Render() app.UI {
	list := p.found()
	p.at = max(0, min(p.at, len(list)-1))
	return app.Div().Class("palette").Role("dialog").Aria("modal", true).Aria("label", "Commands").OnKeyDown(p.key).Body(
		app.Label().For("palette-text").Class("unseen").Text("What do you want to do?"),
		app.Input().ID("palette-text").Type("search").Placeholder("What do you want to do?").AutoComplete(false).Value(p.text).
			Role("combobox").Aria("controls", "palette-list").Aria("expanded", true).Aria("activedescendant", p.rowID(p.at)).
			OnInput(func(ctx app.Context, _ app.Event) { p.text, p.at = ctx.JSSrc().Get("value").String(), 0 }),
		app.Ul().ID("palette-list").Role("listbox").Aria("label", "Commands").Body(
			app.Range(list).Slice(func(i int) app.UI { return p.row(i, list[i]) }),
		),
		only(len(list) == 0, func() app.UI { return app.P().Text("No command has these words.") }),
		button("Close", func(ctx app.Context, _ app.Event) { p.Close(ctx) }, "palette").ID("palette-close"),
	)
}

func (p *palette) rowID(i int) string { return "command-" + attribute(float64(i)) }

func (p *palette) row(i int, c command) app.UI {
	class := ""
	if i == p.at {
		class = "current"
	}
	return app.Li().ID(p.rowID(i)).Class(class).Role("option").Aria("selected", i == p.at).Body(
		app.Span().Text(c.name),
		only(c.keys != "", func() app.UI { return app.Kbd().Text(c.keys) }),
	).OnClick(func(ctx app.Context, _ app.Event) { p.run(ctx, c) }, app.EventScope(c.name))
}

// found lists the commands that have every word that was typed.
func (p *palette) found() []command {
	words := strings.Fields(strings.ToLower(p.text))
	var list []command
	for _, c := range p.Commands {
		name, all := strings.ToLower(c.name), true
		for _, w := range words {
			all = all && strings.Contains(name, w)
		}
		if all {
			list = append(list, c)
		}
	}
	return list
}

func (p *palette) run(ctx app.Context, c command) {
	p.Close(ctx)
	c.do(ctx)
}

// key goes along the list, runs what is chosen, or closes.
func (p *palette) key(ctx app.Context, e app.Event) {
	list := p.found()
	switch e.Get("key").String() {
	case "ArrowDown":
		p.at = min(p.at+1, len(list)-1)
	case "ArrowUp":
		p.at = max(p.at-1, 0)
	case "Enter":
		if e.Get("target").Get("id").String() == "palette-close" {
			p.Close(ctx)
		} else if len(list) > 0 {
			p.run(ctx, list[p.at])
		}
	case "Escape":
		p.Close(ctx)
	case "Tab":
		focus(map[bool]string{true: "palette-text", false: "palette-close"}[e.Get("target").Get("id").String() == "palette-close"])
	default:
		ctx.PreventUpdate()
		return
	}
	e.PreventDefault()
}
