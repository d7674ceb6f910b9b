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
					OnChange(func(ctx app.Context, _ app.Event) { c.Pick(ctx, word.Value) }, app.EventScope(c.Group, word.Value, c.Value)),
				app.Label().For(c.id(word.Value)).Text(word.Text),
			)
		}),
	)
}

func (c *choiceGroup) id(value string) string { return c.Group + "-" + value }

// OnMount and OnUpdate mark the word that holds once the panel around stands.
func (c *choiceGroup) OnMount(ctx app.Context)  { ctx.Defer(c.mark) }
func (c *choiceGroup) OnUpdate(ctx app.Context) { ctx.Defer(c.mark) }

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
