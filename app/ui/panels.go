package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// Panels is the column beside the sheet.
type Panels struct {
	app.Compo

	Desk    *model.Desk
	Caller  Caller
	Changed func(app.Context) // to be called after any edit of the desk
}

// Render shows the names of the cars.
func (p *Panels) Render() app.UI {
	return app.Section().Class("panels").Aria("label", "Panels").Body(
		app.Range(p.Desk.Session.Cars().List).Slice(func(i int) app.UI {
			return app.P().Text(p.Desk.Session.Cars().List[i].Name)
		}),
	)
}
