package ui

import (
	"errors"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/internal/study"
	"toewright/solver"
)

// variable is a free parameter with its bounds.
type variable struct {
	app.Compo
	Bench    bench
	Variable study.Variable
}

// Render shows the bounds in one line.
func (v *variable) Render() app.UI {
	key := v.Variable.Parameter
	p, _, err := solver.FindParameter(v.Bench.cars().Design, key)
	if err != nil {
		return app.P().Class("problem").Text(plain(err))
	}
	n, d := v.Bench.numbers(), v.Bench.document()
	return app.FieldSet().Class("variable").Body(
		app.Legend().Text(p.Label),
		&field{ID: "min-" + key, Label: "from", Value: n.ValueNumber(d, p, v.Variable.Min), Set: v.setter(p, func(x float64) { v.Variable.Min = x })},
		&field{ID: "max-" + key, Label: "to", Unit: n.ValueUnit(p), Value: n.ValueNumber(d, p, v.Variable.Max), Set: v.setter(p, func(x float64) { v.Variable.Max = x })},
		&field{ID: "grid-" + key, Label: "in steps of", Unit: n.ValueUnit(p), Value: v.grid(p), Set: v.setGrid(p),
			Disabled: v.Variable.Grid == 0 && len(v.Variable.Sizes) > 0},
		app.Details().Class("sizes").Open(len(v.Variable.Sizes) > 0).Body(
			app.Summary().Text("Or only certain sizes"),
			&field{ID: "sizes-" + key, Label: "sizes at hand", Unit: n.ValueUnit(p), Value: n.SizesText(d, p, v.Variable.Sizes),
				Wide: true, Set: v.setSizes(p)},
		),
		button("Fix", func(ctx app.Context, _ app.Event) {
			v.Bench.edit(ctx, func() error { return v.Bench.session().Fix(key) })
		}, key).Aria("label", "Fix "+p.Label),
	)
}

// errBounds is what bounds that leave no room are refused with.
var errBounds = errors.New("the lower bound must lie below the upper one")

// setter returns what sets one of the bounds from a text.
func (v *variable) setter(p solver.Parameter, put func(float64)) func(app.Context, string) error {
	return func(ctx app.Context, text string) error {
		x, err := v.Bench.numbers().ParseValue(v.Bench.document(), p, text)
		if err != nil {
			return err
		}
		before := v.Variable
		put(x)
		if !(v.Variable.Min < v.Variable.Max) {
			v.Variable = before
			return errBounds
		}
		return v.Bench.edit(ctx, func() error {
			return v.Bench.session().SetBounds(v.Variable.Parameter, v.Variable.Min, v.Variable.Max)
		})
	}
}

// grid writes the step that the shop can hold, empty where none is stated.
func (v *variable) grid(p solver.Parameter) string {
	if v.Variable.Grid == 0 {
		return ""
	}
	return v.Bench.numbers().ValueNumber(v.Bench.document(), p, v.Variable.Grid)
}

// errGrid is what a step that is none is refused with.
var errGrid = errors.New("a step must be more than 0; leave it empty for any value")

// setGrid returns what sets the step from a text.
func (v *variable) setGrid(p solver.Parameter) func(app.Context, string) error {
	return func(ctx app.Context, text string) error {
		step := 0.0
		if text != "" {
			x, err := v.Bench.numbers().ParseValue(v.Bench.document(), p, text)
			if err != nil {
				return err
			}
			if !(x > 0) {
				return errGrid
			}
			step = x
		}
		key := v.Variable.Parameter
		return v.Bench.edit(ctx, func() error { return v.Bench.session().SetGrid(key, step) })
	}
}

// setSizes returns what sets the only values that the shop has from a text.
func (v *variable) setSizes(p solver.Parameter) func(app.Context, string) error {
	return func(ctx app.Context, text string) error {
		sizes, err := v.Bench.numbers().ParseSizes(v.Bench.document(), p, &v.Variable, text)
		if err != nil {
			return err
		}
		key := v.Variable.Parameter
		return v.Bench.edit(ctx, func() error { return v.Bench.session().SetSizes(key, sizes) })
	}
}
