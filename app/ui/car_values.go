package ui

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
	"toewright/solver"
)

// values shows what else may be stated of the car.
func (c *car) values() app.UI {
	list := model.CarValues(c.Bench.document())
	return app.Section().Class("block").ID("car-values").Body(
		app.H2().Text("Gear, studs and tyres"),
		app.P().Class("note").Text("Leave empty what is not known."),
		c.axle(),
		c.adjuster(),
		app.Range(list).Slice(func(i int) app.UI { return c.value(&list[i]) }),
		app.P().Class("note").Body(
			app.Text("What they are: "),
			app.Range(list).Slice(func(i int) app.UI {
				name, _, _ := strings.Cut(strings.ToLower(list[i].Label), ",")
				return app.Span().Body(explain(name, list[i].About), app.If(i < len(list)-1, func() app.UI { return app.Text(", ") }).Else(func() app.UI { return app.Text(".") }))
			}),
		),
	)
}

// value is the field of one value, with where it comes from.
func (c *car) value(v *model.CarValue) app.UI {
	return app.Div().Body(
		&field{
			ID: v.ID, Label: v.Label, Unit: v.Unit, Value: v.Text, Tag: model.SourceTag(c.Bench.document(), v.Path), Wide: v.Unit == "",
			Set: func(ctx app.Context, text string) error {
				return c.Bench.edit(ctx, func() error { return c.Bench.session().SetCarValue(v, text) })
			},
		},
		c.Bench.keep(v.Path, strings.ToLower(v.Label)),
	)
}

// axle says which axle it is.
func (c *car) axle() app.UI {
	return menu("axle", "Axle", c.Bench.document().Vehicle.Axle, []choice{{"", "not stated"}, {"front", "front"}, {"rear", "rear"}},
		func(ctx app.Context, value string) {
			c.Bench.edit(ctx, func() error {
				return c.Bench.session().Edit("axle", "", func(d *study.Document) { d.Vehicle.Axle = value })
			})
		})
}

// adjuster says which part takes up camber and caster, where there is a choice.
func (c *car) adjuster() app.UI {
	d := c.Bench.document()
	kind, err := solver.KindByName(d.Suspension.Type)
	if err != nil || len(kind.Adjusters()) < 2 {
		return nil
	}
	var list []choice
	for i, a := range kind.Adjusters() {
		key := a.Key
		if i == 0 && d.Suspension.Adjuster == "" {
			key = "" // the usual one, not stated
		}
		list = append(list, choice{key, a.Label})
	}
	return menu("adjuster", "Camber and caster are set by", d.Suspension.Adjuster, list, func(ctx app.Context, key string) {
		c.Bench.edit(ctx, func() error { return c.Bench.session().SetAdjuster(key) })
	})
}

// notes is the field of the study's notes.
func notes(b bench, text string) app.UI {
	const id = "study-notes"
	take := func(ctx app.Context, _ app.Event) {
		typed := ctx.JSSrc().Get("value").String()
		halfTyped.drop(id)
		b.edit(ctx, func() error {
			return b.session().Edit("notes", "", func(d *study.Document) { d.Notes = typed })
		})
	}
	return app.Div().Class("field").Body(
		app.Label().For(id).Text("Notes"),
		app.Textarea().ID(id).Rows(3).Text(halfTyped.or(id, text)).OnChange(take).
			OnInput(func(ctx app.Context, _ app.Event) {
				halfTyped.set(id, ctx.JSSrc().Get("value").String(), text)
				ctx.PreventUpdate()
			}, app.EventScope(text)).
			OnBlur(func(ctx app.Context, e app.Event) {
				if halfTyped.found[id] { // which the browser takes for the field's own
					take(ctx, e)
					return
				}
				ctx.PreventUpdate()
			}),
	)
}

// untouched says what of the study has no field here.
func untouched(d *study.Document) app.UI {
	names := model.KeptUntouched(d)
	if len(names) == 0 {
		return nil
	}
	return app.P().ID("untouched").Class("note").Text("Kept as the file has it, without a field on this page: " + strings.Join(names, ", ") + ".")
}
