package model

import (
	"cmp"
	"strings"

	"toewright/internal/plot"
	"toewright/internal/version"
)

// Caution stands in the title block of every drawing.
const Caution = "Geometry of rigid links, not strength: no arm is to be bent, heated, welded or bored on its word."

// Caution returns what stands below a drawing of the desk's study: that no part is to be
// made by it while it is of a template's numbers, and what holds of every drawing.
func (d *Desk) Caution() string {
	return strings.TrimSpace(ShortWarning(d.Session.Document()) + " " + Caution)
}

// TitleBlock returns the fields of the drawing's title block.
func (d *Desk) TitleBlock() []plot.Field {
	doc := d.Session.Document()
	n, w, mm := NumbersOf(doc), doc.Window(), doc.Units.Millimetres
	shown := "–"
	if c := d.Selected(); c != nil {
		shown = c.Name
	}
	bump := strings.TrimSuffix(n.Travel(mm(w.Bump)), " "+n.LengthUnit())
	return []plot.Field{
		{Label: "Drawing", Value: cmp.Or(doc.Name, "without a name"), Part: 2},
		{Label: "Shown", Value: shown, Part: 1.6},
		{Label: "Rev.", Value: cmp.Or(doc.Revision, "–"), Part: 0.5},
		{Label: "Date", Value: cmp.Or(doc.Date, "–"), Part: 0.8},
		{Label: "Window", Value: "+" + bump + " / " + n.Travel(-mm(w.Droop)), Part: 1.2},
		{Label: "Units", Value: n.LengthUnit() + ", toe " + In(n.ToeUnit()), Part: 1.2},
		{Label: "Program", Value: version.Name(), Part: 1.2},
	}
}
