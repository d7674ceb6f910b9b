package ui

import (
	"cmp"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/version"
)

// titleBlock is the block at the foot of the sheet, as every drawing has one.
type titleBlock struct {
	app.Compo

	Desk    *model.Desk
	Version uint64 // changes with each edit
}

// Render draws the block.
func (t *titleBlock) Render() app.UI {
	d := t.Desk.Session.Document()
	n := model.NumbersOf(d)
	w := d.Window()
	mm := d.Units.Millimetres
	return app.Footer().Class("title-block").Aria("label", "Title block").Body(
		app.Dl().Body(
			entry("Drawing", cmp.Or(d.Name, "without a name"), "wide"),
			entry("Shown", t.shown(), "wide"),
			entry("Rev.", cmp.Or(d.Revision, "–"), ""),
			entry("Date", cmp.Or(d.Date, "–"), ""),
			entry("Window", "+"+strings.TrimSuffix(n.Travel(mm(w.Bump)), " "+n.LengthUnit())+" / "+n.Travel(-mm(w.Droop)), ""),
			entry("Units", n.LengthUnit()+", toe in "+n.ToeUnit(), ""),
			entry("Program", version.Name(), ""),
		),
		app.P().Class("caution").Text("Geometry of rigid links, not strength: no arm is to be bent, heated, welded or bored on its word."),
	)
}

// shown returns the name of the car that is drawn.
func (t *titleBlock) shown() string {
	if c := t.Desk.Selected(); c != nil {
		return c.Name
	}
	return "–"
}

func entry(label, value, class string) app.UI {
	return app.Div().Class(class).Body(app.Dt().Text(label), app.Dd().Text(value))
}
