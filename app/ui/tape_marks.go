package ui

import (
	"maps"
	"slices"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// marks are where the marks stand, and how well.
func (t *tape) marks() app.UI {
	m, n := t.Bench.document().Measured, t.Bench.numbers()
	if len(m.Marks) == 0 {
		return nothing()
	}
	mm := t.Bench.document().Units.Millimetres
	number := func(id, label string, value float64, set func(mm float64) error) app.UI {
		return &field{ID: id, Label: label, Value: n.LengthNumber(value), Unit: n.LengthUnit(), Set: t.length(set)}
	}
	s, names := t.Bench.session(), slices.Sorted(maps.Keys(m.Marks))
	return app.Section().Class("block").Body(
		app.H2().Text("Marks"),
		app.P().Class("note").Text("Where yours stand: forward of the axle, left of the centreline, over the floor. A mark that is off by more than is said here misleads every band."),
		number("tape-mark-sd", "Each is known to ±", mm(m.MarkSD), s.SetMarkSD),
		app.Range(names).Slice(func(i int) app.UI {
			name := names[i]
			return app.FieldSet().Class("point").Body(
				app.Legend().Text("Mark "+name),
				app.Div().Class("coordinates").Body(app.Range([3]struct{}{}).Slice(func(axis int) app.UI {
					return number("tape-mark-"+strconv.Itoa(i)+"-"+strconv.Itoa(axis), string("xyz"[axis]), mm(m.Marks[name][axis]),
						func(mm float64) error { return s.SetMark(name, axis, mm) })
				})),
			)
		}),
	)
}
