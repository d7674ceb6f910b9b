package ui

import (
	"errors"
	"slices"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
	"toewright/solver"
)

// free is the table of what may change, with its bounds.
func (q *question) free() app.UI {
	list := q.search().Variables
	return app.Div().Body(
		app.If(len(list) == 0, func() app.UI { return app.P().Class("problem").Text("Nothing may change yet: add a parameter.") }).
			Else(func() app.UI {
				return app.Table().Class("asked frees").Body(
					app.THead().Body(app.Tr().Body(heads("What", "At least", "", "At most", "Step", "Now", "")...)),
					app.Range(list).Slice(func(i int) app.UI { return &variable{Bench: q.Bench, State: q.State, Variable: list[i]} }),
				)
			}),
		&picker{
			ID: "free", Label: "Add a parameter", Design: q.Bench.cars().Design,
			Taken: func(key string) bool {
				return slices.ContainsFunc(list, func(v study.Variable) bool { return v.Parameter == key })
			},
			Pick: func(ctx app.Context, key string) {
				q.Bench.edit(ctx, func() error { return q.Bench.session().Free(key) })
			},
		},
	)
}

// search returns the search as the study has it, or the usual one.
func (q *question) search() *study.Search {
	return model.SearchOf(q.Bench.document(), q.Bench.cars().Design)
}

// heads are the heads of a table's columns; one without a word stands over what says
// itself what it is.
func heads(texts ...string) (list []app.UI) {
	for _, text := range texts {
		if text == "" {
			list = append(list, app.Td())
			continue
		}
		list = append(list, app.Th().Scope("col").Text(text))
	}
	return list
}

// variable is a parameter that may change, with its bounds.
type variable struct {
	app.Compo
	Bench    bench
	State    *asking
	Variable study.Variable

	held int     // which bound a pointer drags: -1 the lower, 1 the upper, 0 none
	to   float64 // and where it is
}

// Render shows the bounds in a row, and the sizes at hand in another where they are asked
// for.
func (v *variable) Render() app.UI {
	key := v.Variable.Parameter
	p, _, err := solver.FindParameter(v.Bench.cars().Design, key)
	if err != nil {
		return app.TBody().Body(app.Tr().Body(app.Td().ColSpan(7).Class("problem").Text(plain(err))))
	}
	n, d := v.Bench.numbers(), v.Bench.document()
	now := v.Bench.Desk.ValueOf(v.Bench.Desk.Selected().Index, key)
	open := v.State.variable == key
	return app.TBody().Body(
		app.Tr().Body(
			app.Th().Scope("row").Body(explain(upperFirst(p.Label), model.AboutParameter(p.Key)), app.Span().Class("unit").Text(" "+n.ValueUnit(p))),
			cell("at least", &field{ID: "min-" + key, Label: p.Label + " at least", Hidden: true, Value: n.ValueNumber(d, p, v.Variable.Min), Set: v.setter(p, func(x float64) { v.Variable.Min = x })}),
			v.bar(p, now),
			cell("at most", &field{ID: "max-" + key, Label: p.Label + " at most", Hidden: true, Value: n.ValueNumber(d, p, v.Variable.Max), Set: v.setter(p, func(x float64) { v.Variable.Max = x })}),
			cell("step", &field{ID: "grid-" + key, Label: p.Label + " in steps of", Hidden: true, Value: v.grid(p), Set: v.setGrid(p),
				Disabled: v.Variable.Grid == 0 && len(v.Variable.Sizes) > 0}),
			app.Td().Class("now").DataSet("label", "now").Text(n.ValueNumber(d, p, now)),
			app.Td().Class("more").Body(moreButton("more-"+key, p.Label, open, func(app.Context, app.Event) {
				if v.State.variable = key; open {
					v.State.variable = ""
				}
			})),
		),
		only(open, func() app.UI { return v.details(p) }),
	)
}

// cell is a cell of a row that is being asked about, with its label for where the head
// of its column is not shown.
func cell(label string, body ...app.UI) app.UI {
	return app.Td().DataSet("label", label).Body(body...)
}

// moreButton shows and hides what else there is to a row.
func moreButton(id, of string, open bool, on app.EventHandler) app.UI {
	return app.Button().Type("button").ID(id).Class("small").Text("…").Aria("expanded", open).Aria("label", "More of "+of).
		OnClick(on, app.EventScope(id, open))
}

// details are the sizes at hand, and the way back to what stays as it is.
func (v *variable) details(p solver.Parameter) app.UI {
	key, n, d := v.Variable.Parameter, v.Bench.numbers(), v.Bench.document()
	return app.Tr().Class("details").Body(app.Td().ColSpan(7).Body(app.Div().Class("row").Body(
		&field{ID: "sizes-" + key, Label: "Or only the sizes at hand", Unit: n.ValueUnit(p), Value: n.SizesText(d, p, v.Variable.Sizes),
			Wide: true, Set: v.setSizes(p)},
		button("Let it stay", func(ctx app.Context, _ app.Event) {
			v.Bench.edit(ctx, func() error { return v.Bench.session().Fix(key) })
		}, key).Aria("label", "Let "+p.Label+" stay as it is"),
	)))
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
		return v.Bench.change(ctx, func() error {
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
		return v.Bench.change(ctx, func() error { return v.Bench.session().SetGrid(key, step) })
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
		return v.Bench.change(ctx, func() error { return v.Bench.session().SetSizes(key, sizes) })
	}
}
