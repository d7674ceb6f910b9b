package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// Strip is the table of candidates below the sheet.
type Strip struct {
	app.Compo

	Desk    *model.Desk
	Changed func(app.Context) // to be called after any edit of the desk
}

// Render shows nothing until there is more than the base car.
func (s *Strip) Render() app.UI { return app.Section().Class("strip").Aria("label", "Candidates") }
