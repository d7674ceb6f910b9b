package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// Sheet is the drawing.
type Sheet struct {
	app.Compo

	Desk *model.Desk
}

// Render draws the sheet.
func (s *Sheet) Render() app.UI { return app.Section().Class("sheet").Aria("label", "Drawing") }
