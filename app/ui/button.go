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

// choices shows words of which one holds. Group is the name of the group, unique on
// the page.
func choices(group, label, value string, list []choice, pick func(app.Context, string)) app.UI {
	return app.FieldSet().Class("choices").Body(
		app.Legend().Text(label),
		app.Range(list).Slice(func(i int) app.UI {
			id := group + "-" + list[i].Value
			return app.Span().Class("choice").Body(
				app.Input().Type("radio").ID(id).Name(group).Value(list[i].Value).Checked(list[i].Value == value).
					OnChange(func(ctx app.Context, _ app.Event) { pick(ctx, list[i].Value) }, app.EventScope(id, value)),
				app.Label().For(id).Text(list[i].Text),
			)
		}),
	)
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
