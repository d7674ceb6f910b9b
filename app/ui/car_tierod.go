package ui

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// tieRod shows what the adjuster and the rod ends allow.
func (c *car) tieRod() app.UI {
	values := model.TieRodValues
	return app.Section().Class("block").ID("tie-rod").Body(
		app.H2().Text("Tie rod"),
		app.P().Class("note").Text("What the adjuster and its ball joints allow. It moves no wheel; leave empty what is not known."),
		app.Div().Class("numbers").Body(app.Range(values).Slice(func(i int) app.UI { return c.tieRodValue(&values[i]) })),
		app.P().Class("note").Body(
			app.Text("How to measure: "),
			app.Range(values).Slice(func(i int) app.UI { return howToMeasure(&values[i], i == len(values)-1) }),
		),
	)
}

// howToMeasure says where a number is measured, in a list that the last one ends.
func howToMeasure(v *model.TieRodValue, last bool) app.UI {
	name, _, _ := strings.Cut(strings.ToLower(v.Label), ",")
	mark := ", "
	if last {
		mark = "."
	}
	return app.Span().Body(explain(name, v.About), app.Text(mark))
}

// tieRodValue is the field of one number.
func (c *car) tieRodValue(v *model.TieRodValue) app.UI {
	text, unit := c.Bench.numbers().TieRodText(c.Bench.document(), v)
	return &field{
		ID: "tie-rod-" + v.Key, Label: v.Label, Unit: unit, Value: text,
		Set: func(ctx app.Context, text string) error {
			set := func() error { return c.Bench.session().SetTieRod(v, text) }
			if strings.TrimSpace(text) == "" && v.LosesAxis(c.Bench.document()) {
				return c.Bench.changeTold(ctx, "The axis that the file states for the joint goes with its half angle.", set)
			}
			return c.Bench.change(ctx, set)
		},
	}
}
