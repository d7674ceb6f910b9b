package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// keymap lists what keys do, and where.
type keymap struct {
	app.Compo
	Close func(app.Context)
}

// keyGroups are the keys by where they are heard.
var keyGroups = []struct {
	where string
	keys  [][2]string
}{
	{"Anywhere", [][2]string{
		{"Ctrl K", "find a command by its words"}, {"1 … 5", "open a step; with Alt from within a field too"}, {"Ctrl Z, Ctrl Y", "undo, redo"},
		{"Ctrl S", "save the study as a file"}, {"Ctrl P", "print the drawing, or the bench sheet where it is open"}, {"Escape", "close a menu"}, {"?", "this list"},
	}},
	{"On the drawing", [][2]string{
		{"Tab", "from one ringed ball, wheel or marker to the next"}, {"Arrows", "move it by a spacer; Shift by ten"},
		{"Page up, Page down", "move it by ten"}, {"Alt while dragging", "between the steps of spacers"},
	}},
	{"Before and after", [][2]string{
		{"Arrows, Page up, Page down", "move the wheels"}, {"Home, End", "full droop, full bump"}, {"Space", "play or stop"},
	}},
	{"In a number", [][2]string{
		{"Up, Down", "a step more or less; Shift ten"}, {"Enter", "take what is typed"}, {"Escape", "put back what stood there"},
	}},
	{"On the steps", [][2]string{{"Left, Right", "open the step beside"}}},
}

// OnMount gives the keyboard to the way out.
func (k *keymap) OnMount(ctx app.Context) {
	ctx.Defer(func(app.Context) { focus("keymap-close") })
}

// Render shows the list over the page.
func (k *keymap) Render() app.UI {
	return app.Div().ID("keymap").Class("palette").Role("dialog").Aria("modal", true).Aria("label", "Keys").OnKeyDown(k.key).Body(
		app.Div().Class("key-groups").Body(app.Range(keyGroups).Slice(func(i int) app.UI {
			g := keyGroups[i]
			return app.Section().Body(
				app.H2().Text(g.where),
				app.Dl().Class("values").Body(app.Range(g.keys).Slice(func(j int) app.UI {
					return app.Div().Body(app.Dt().Body(app.Kbd().Text(g.keys[j][0])), app.Dd().Text(g.keys[j][1]))
				})),
			)
		})),
		button("Close", func(ctx app.Context, _ app.Event) { k.Close(ctx) }, "keymap").ID("keymap-close"),
	)
}

// key closes the list, and keeps the keyboard on it until then.
func (k *keymap) key(ctx app.Context, e app.Event) {
	switch e.Get("key").String() {
	case "Escape":
		k.Close(ctx)
	case "Tab":
	default:
		ctx.PreventUpdate()
		return
	}
	e.PreventDefault()
}
