package ui

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// pointRow is a hardpoint with its three coordinates. While one of them is typed the
// sheet points the point out.
type pointRow struct {
	app.Compo
	Bench bench
	Row   model.PointRow
}

// Render shows the coordinates and what looks like a slip beneath.
func (r *pointRow) Render() app.UI {
	found := r.Row.Findings
	return app.FieldSet().Class(r.class()).Body(
		app.Legend().Body(explain(r.Row.Label, model.AboutPoint(r.Row.Name)), tag(model.SourceTag(r.Bench.document(), r.path())), r.Bench.keep(r.path(), r.Row.Label)),
		app.Div().Class("coordinates").Body(
			app.Range([3]struct{}{}).Slice(func(i int) app.UI { return r.coordinate(i) }),
		),
		app.If(len(found) > 0, func() app.UI {
			return app.Ul().Class("findings").Body(app.Range(found).Slice(func(i int) app.UI { return r.Bench.slip(found[i], false) }))
		}),
	)
}

// path is that by which the point's sources are known.
func (r *pointRow) path() string { return r.Bench.document().SourcePath(r.Row.PlacedPoint) }

func (r *pointRow) class() string {
	v := &r.Bench.Desk.View
	if v.Point == r.Row.Name && v.PointSide == r.Row.Side.Solver() {
		return "point pointed"
	}
	return "point"
}

// coordinate is the field of one coordinate.
func (r *pointRow) coordinate(axis int) app.UI {
	n, d := r.Bench.numbers(), r.Bench.document()
	name := string("xyz"[axis])
	return &field{
		ID:    "point-" + strings.ReplaceAll(r.Row.Name, ".", "-") + string(r.Row.Side) + "-" + name,
		Label: name, Value: n.LengthNumber(d.Units.Millimetres(r.Row.Place[axis])), Unit: n.LengthUnit(),
		Set: func(ctx app.Context, text string) error {
			mm, err := n.ParseLength(text)
			if err != nil {
				return err
			}
			return r.set(ctx, axis, d.Units.FromMillimetres(mm))
		},
		Class:   theirs(d, &r.Row, axis),
		Focused: r.point,
	}
}

func (r *pointRow) set(ctx app.Context, axis int, value float64) error {
	return r.Bench.edit(ctx, func() error { return r.Bench.session().SetPoint(r.Row.PlacedPoint, axis, value) })
}

// point makes the sheet point the point out.
func (r *pointRow) point(ctx app.Context) {
	v := &r.Bench.Desk.View
	v.Point, v.PointSide = r.Row.Name, r.Row.Side.Solver()
	r.Bench.Changed(ctx)
}
