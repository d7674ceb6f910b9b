package ui

import (
	"errors"
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
	"toewright/solver"
)

// tolerance is by how much one parameter may be off.
type tolerance struct {
	app.Compo
	Bench     bench
	Index     int
	Tolerance study.Tolerance
}

// errTolerance is what a tolerance without a width is refused with.
var errTolerance = errors.New("a tolerance must be more than 0")

// Render shows the width and how it is spread.
func (t *tolerance) Render() app.UI {
	p, sides, err := solver.FindParameter(t.Bench.cars().Design, t.Tolerance.Parameter)
	if err != nil {
		return app.Tr().Body(app.Td().ColSpan(4).Class("problem").Text(plain(err)))
	}
	n, d := t.Bench.numbers(), t.Bench.document()
	sign, label, value := "±", "±", t.Tolerance.PlusMinus
	if t.Tolerance.SD > 0 {
		sign, label, value = "sd", "standard deviation", t.Tolerance.SD
	}
	id, name := fmt.Sprintf("tolerance-%d", t.Index), p.Label+sideWord(sides)
	return app.Tr().Body(
		app.Th().Scope("row").Body(app.Text(upperFirst(name)), tag(t.tag())),
		cell("by", app.Div().Class("signed").Body(
			app.Span().Class("unit").Aria("hidden", true).Text(sign),
			&field{ID: id, Label: label + " of " + name, Hidden: true, Unit: n.ValueUnit(p), Value: n.ValueNumber(d, p, value), Set: t.setter(p)},
		)),
		cell("differs", menu(id+"-varies", name+" differs", t.varies(), []choice{{"side", "from side to side"}, {"car", "from car to car"}}, t.setVaries)),
		app.Td().Class("more").Body(button("×", func(ctx app.Context, _ app.Event) {
			t.Bench.edit(ctx, func() error { return t.Bench.session().RemoveTolerance(t.Index) })
		}, t.Index).Class("small").Aria("label", "Remove the tolerance of "+name)),
	)
}

// tag says where the width comes from.
func (t *tolerance) tag() string {
	key := "plusMinus"
	if t.Tolerance.SD > 0 {
		key = "sd"
	}
	return model.SourceTag(t.Bench.document(), fmt.Sprintf("tolerances.%d.%s", t.Index, key))
}

func (t *tolerance) varies() string {
	if t.Tolerance.Varies == "car" {
		return "car"
	}
	return "side"
}

func (t *tolerance) setVaries(ctx app.Context, value string) {
	t.Bench.tell(ctx, t.set(ctx, func(k *study.Tolerance) { k.Varies = value }))
}

// setter returns what sets the width from a text.
func (t *tolerance) setter(p solver.Parameter) func(app.Context, string) error {
	return func(ctx app.Context, text string) error {
		x, err := t.Bench.numbers().ParseValue(t.Bench.document(), p, text)
		if err != nil {
			return err
		}
		if !(x > 0) {
			return errTolerance
		}
		return t.set(ctx, func(k *study.Tolerance) {
			if k.SD > 0 {
				k.SD = x
			} else {
				k.PlusMinus = x
			}
		})
	}
}

func (t *tolerance) set(ctx app.Context, change func(*study.Tolerance)) error {
	return t.Bench.change(ctx, func() error { return t.Bench.session().SetTolerance(t.Index, change) })
}
