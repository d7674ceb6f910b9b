package ui

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
	"toewright/solver"
)

// values shows what else may be stated of the car, of the vehicle or of its gear.
func (c *car) values(list []model.CarValue) app.UI {
	return app.Div().Body(
		app.Div().Class("numbers").Body(app.Range(list).Slice(func(i int) app.UI { return c.value(&list[i]) })),
		app.P().Class("note").Body(
			app.Text("What they are: "),
			app.Range(list).Slice(func(i int) app.UI {
				name, _, _ := strings.Cut(strings.ToLower(list[i].Label), ",")
				return app.Span().Body(explain(name, list[i].About), app.If(i < len(list)-1, func() app.UI { return app.Text(", ") }).Else(func() app.UI { return app.Text(".") }))
			}),
		),
	)
}

// gear shows the steering gear.
func (c *car) gear() app.UI {
	list := model.GearValues(c.Bench.document())
	return only(len(list) > 0, func() app.UI {
		return app.Section().Class("block").ID("car-values").Body(app.H2().Text("Gear and studs"), c.values(list))
	})
}

// mount shows what the study states by places: they are rows of the points.
func (c *car) mount(m *model.Mount) app.UI {
	s := c.Bench.session()
	set := func(text string, stated bool) app.EventHandler {
		return func(ctx app.Context, _ app.Event) {
			c.Bench.undoable(ctx, text, func() error { return s.SetMount(m.Key, stated) })
		}
	}
	body := []app.UI{app.H2().Text(m.Label), app.P().Class("note").Text(m.About)}
	if !m.Stated {
		body = append(body, button("State it", set(m.Label+": its places stand among the points, not yours until you type them.", true), m.Key).ID("state-"+m.Key).Aria("label", "State it: "+m.Label))
		return app.Section().Class("block").Body(body...)
	}
	if m.On != "" {
		body = append(body, menu("on-"+m.Key, "Its moving end is on the", m.On, []choice{{"lower-arm", "lower arm"}, {"upper-arm", "upper arm"}, {"knuckle", "knuckle"}}, func(ctx app.Context, on string) {
			c.Bench.edit(ctx, func() error { return s.SetCarrier(m.Key, on) })
		}))
	}
	bolts := func(text string, more bool) app.UI {
		return only(m.Key == "armFace", func() app.UI {
			return button(text, func(ctx app.Context, _ app.Event) { c.Bench.edit(ctx, func() error { return s.SetBolts(more) }) }, m.Bolts).Disabled(!more && m.Bolts == 0)
		})
	}
	return app.Section().Class("block").Body(append(body, app.Div().Class("deeds").Body(
		bolts("Another bolt", true), bolts("One bolt less", false),
		button("Take it out", set(m.Label+" is taken out.", false), m.Key).ID("drop-"+m.Key).Aria("label", "Take it out: "+m.Label),
	))...)
}

// value is the field of one value, with where it comes from.
func (c *car) value(v *model.CarValue) app.UI { return c.Bench.value(v) }

// value is the field of a value, with where it comes from.
func (b bench) value(v *model.CarValue) app.UI {
	return app.Div().Body(
		&field{
			ID: v.ID, Label: v.Label, Unit: v.Unit, Value: v.Text, Tag: model.SourceTag(b.document(), v.Path), Wide: v.Unit == "",
			Set: func(ctx app.Context, text string) error {
				return b.change(ctx, func() error { return b.session().SetCarValue(v, text) })
			},
		},
		b.keep(v.Path, strings.ToLower(v.Label)),
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
		return nothing()
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
		return nothing()
	}
	return app.P().ID("untouched").Class("note").Text("Kept as the file has it, without a field on this page: " + strings.Join(names, ", ") + ".")
}
