package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/solver"
)

// picker finds a parameter of the registry by words.
type picker struct {
	app.Compo

	ID, Label string
	Design    *solver.Design
	Taken     func(key string) bool
	Pick      func(ctx app.Context, key string)

	open bool
	text string
}

// pickerRows is how many parameters are listed at once.
const pickerRows = 12

// Render shows the button, or the field with what it finds.
func (p *picker) Render() app.UI {
	if !p.open {
		return app.Div().Class("picker").Body(
			button(p.Label, func(app.Context, app.Event) { p.open = true }, p.ID).ID(p.ID),
		)
	}
	found := p.found()
	return app.Div().Class("picker").Body(
		app.Label().For(p.ID+"-text").Text("Find a parameter"),
		app.Input().ID(p.ID+"-text").Type("search").Placeholder("height, caster, lower ball ...").Value(p.text).
			AutoFocus(true).OnInput(p.typed),
		app.Ul().Class("picker-list").Body(
			app.Range(found).Slice(func(i int) app.UI { return p.row(found[i]) }),
			only(len(found) == 0, func() app.UI { return app.Li().Text("No parameter of this car has these words.") }),
		),
		button("Close", func(app.Context, app.Event) { p.open, p.text = false, "" }, p.ID),
	)
}

func (p *picker) typed(ctx app.Context, _ app.Event) { p.text = ctx.JSSrc().Get("value").String() }

// found lists the first parameters that have the words and are not taken.
func (p *picker) found() []solver.Parameter {
	var list []solver.Parameter
	for _, q := range model.FindParameters(p.Design, p.text) {
		if len(list) < pickerRows && !p.Taken(q.Key) {
			list = append(list, q)
		}
	}
	return list
}

func (p *picker) row(q solver.Parameter) app.UI {
	return app.Li().Body(button(q.Label, func(ctx app.Context, _ app.Event) {
		p.open, p.text = false, ""
		p.Pick(ctx, q.Key)
	}, p.ID, q.Key))
}
