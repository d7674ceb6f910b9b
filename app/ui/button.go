package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// button is a button with a word on it. Its handler is told from those of other
// buttons that are made at the same place by the words of the scope.
func button(text string, on app.EventHandler, scope ...any) app.HTMLButton {
	return app.Button().Type("button").Text(text).OnClick(on, app.EventScope(append(scope, text)...))
}

// choice is one of several words of which one holds, as radio buttons.
type choice struct {
	Value, Text string
}

// choices are words of which one holds, as buttons of a radio.
func choices(group, label, value string, list []choice, pick func(app.Context, string)) app.UI {
	return &choiceGroup{Group: group, Label: label, Value: value, List: list, Pick: pick}
}

// choiceGroup is a component for the sake of what browsers do: of two groups of one name, as
// there are for a moment where the panel around them changes, they leave one without its mark.
type choiceGroup struct {
	app.Compo

	Group, Label, Value string
	List                []choice
	Pick                func(app.Context, string)
}

// Render shows the words.
func (c *choiceGroup) Render() app.UI {
	return app.FieldSet().Class("choices").Body(
		app.Legend().Text(c.Label),
		app.Range(c.List).Slice(func(i int) app.UI {
			word := c.List[i]
			return app.Span().Class("choice").Body(
				app.Input().Type("radio").ID(c.id(word.Value)).Name(c.Group).Value(word.Value).Checked(word.Value == c.Value).
					OnChange(func(ctx app.Context, _ app.Event) { c.picked(ctx, word.Value) }, app.EventScope(c.Group, word.Value, c.Value)),
				app.Label().For(c.id(word.Value)).Text(word.Text),
			)
		}),
	)
}

func (c *choiceGroup) id(value string) string { return c.Group + "-" + value }

// OnMount and OnUpdate mark the word that holds once the panel around stands, where none is
// marked: one that is has perhaps been pressed just now, and a browser that finds the mark gone
// again says nothing of the press.
func (c *choiceGroup) OnMount(ctx app.Context)  { ctx.Defer(c.markOne) }
func (c *choiceGroup) OnUpdate(ctx app.Context) { ctx.Defer(c.markOne) }

func (c *choiceGroup) markOne(ctx app.Context) {
	for _, word := range c.List {
		if e := app.Window().GetElementByID(c.id(word.Value)); e.Truthy() && e.Get("checked").Bool() {
			return
		}
	}
	c.mark(ctx)
}

// picked takes a word. Where it is refused the mark goes back.
func (c *choiceGroup) picked(ctx app.Context, value string) {
	c.Pick(ctx, value)
	ctx.Defer(func(ctx app.Context) {
		if c.Value != value {
			c.mark(ctx)
		}
	})
}

func (c *choiceGroup) mark(app.Context) {
	if e := app.Window().GetElementByID(c.id(c.Value)); e.Truthy() {
		e.Set("checked", true)
	}
}

// menu is a list of words of which one holds, as a closed list.
func menu(id, label, value string, list []choice, pick func(app.Context, string)) app.UI {
	return app.Div().Class("field").Body(
		app.Label().For(id).Text(label),
		app.Select().ID(id).OnChange(func(ctx app.Context, _ app.Event) {
			pick(ctx, ctx.JSSrc().Get("value").String())
		}, app.EventScope(id, value)).Body(
			app.Range(list).Slice(func(i int) app.UI {
				return app.Option().Value(list[i].Value).Text(list[i].Text).Selected(list[i].Value == value)
			}),
		),
	)
}
