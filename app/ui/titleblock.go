package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// titleBlock is the block at the foot of the sheet, as every drawing has one.
type titleBlock struct {
	app.Compo

	Desk    *model.Desk
	Version uint64 // changes with each edit
}

// Render draws the block.
func (t *titleBlock) Render() app.UI {
	fields := t.Desk.TitleBlock()
	return app.Footer().Class("title-block").Aria("label", "Title block").Body(
		app.Dl().Body(app.Range(fields).Slice(func(i int) app.UI {
			return app.Div().Body(app.Dt().Text(fields[i].Label), app.Dd().Text(fields[i].Value))
		})),
		app.P().Class("caution").Text(t.Desk.Caution()),
	)
}
