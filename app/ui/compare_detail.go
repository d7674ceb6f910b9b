package ui

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/solver"
)

// compareDetail is the selected car: what can be changed of it, how it stands to the
// limits, and what can be done with it.
type compareDetail struct {
	app.Compo
	Bench bench
	State *comparing
	Shown []*model.Car // in the order of the columns
}

// Render shows the selected car.
func (d *compareDetail) Render() app.UI {
	car := d.Bench.Desk.Selected()
	if car == nil {
		return nothing()
	}
	return app.Section().Class("compare-detail").ID("selected-car").Aria("label", "Selected: "+carName(car)).Body(
		app.H2().Body(badge(car.Index), app.Text(carName(car))),
		only(car.Err != nil, func() app.UI { return app.P().Class("problem").Text(plain(car.Err)) }),
		d.deeds(car),
		app.Div().Class("compare-columns").Body(
			&carEditor{Bench: d.Bench, Car: car.Index},
			app.Div().Body(d.reach(car), only(car.Err == nil, func() app.UI { return standing(d.Bench, car) })),
		),
	)
}

// reach says where the linkage locks, if it does.
func (d *compareDetail) reach(car *model.Car) app.UI {
	if !locks(car) {
		return nothing()
	}
	n := d.Bench.numbers()
	return app.P().Class("warning").Text(fmt.Sprintf("Reach: left %s; right %s.", n.ReachText(&car.Reach[solver.Left]), n.ReachText(&car.Reach[solver.Right])))
}

// deeds are the buttons for what can be done with the car.
func (d *compareDetail) deeds(car *model.Car) app.UI {
	i, s := car.Index, d.Bench.session()
	hide := "Hide"
	if car.Hidden {
		hide = "Show"
	}
	return app.Div().Class("deeds").Body(
		d.pin(car, 0, "A"), d.pin(car, 1, "B"),
		button("Make it the reference", func(ctx app.Context, _ app.Event) {
			d.Bench.edit(ctx, func() error { return d.Bench.Desk.SetYardstick(i) })
		}, i).ID("as-reference").Disabled(d.Bench.Desk.View.Yardstick == i),
		button("Duplicate", func(ctx app.Context, _ app.Event) { d.Bench.duplicate(ctx, i) }, i).ID("duplicate"),
		only(i > 0, func() app.UI {
			return app.Span().Class("deeds").Body(
				button(hide, func(ctx app.Context, _ app.Event) {
					d.Bench.edit(ctx, func() error { return s.Hide(i, !car.Hidden) })
				}, i).ID("hide"),
				d.mover(car, "left", -1), d.mover(car, "right", 1),
				button("Delete", func(ctx app.Context, _ app.Event) {
					d.Bench.undoable(ctx, car.Name+" is deleted.", func() error { return d.Bench.Desk.Delete(i) })
					d.Bench.keyboard("message-undo")
				}, i).ID("delete").Class("danger"),
			)
		}),
	)
}

// pin is the button that keeps a car as one of the two that are laid over each other, and
// lets it go.
func (d *compareDetail) pin(car *model.Car, which int, letter string) app.UI {
	pinned := &d.State.pinned[which]
	return app.Button().Type("button").ID("pin-"+letter).Aria("pressed", *pinned == car.Name).Text("Pin as "+letter).
		OnClick(func(app.Context, app.Event) {
			if *pinned == car.Name {
				*pinned = ""
				return
			}
			*pinned = car.Name
		}, app.EventScope(car.Index, letter))
}

// mover is the button that moves a column by one place. The keyboard stays on it, or where
// it ends goes to the one that leads back.
func (d *compareDetail) mover(car *model.Car, way string, by int) app.UI {
	at := 0
	for i, k := range d.Shown {
		if k == car {
			at = i
		}
	}
	to := at + by
	ends := at == 0 || to < 1 || to >= len(d.Shown)
	back := map[string]string{"left": "right", "right": "left"}[way]
	return button("Move "+way, func(ctx app.Context, _ app.Event) {
		d.Bench.moveColumn(ctx, d.State, d.Shown, car.Index, d.Shown[to].Index)
		d.Bench.keyboard("move-"+back, "move-"+way)
	}, car.Index, at).ID("move-" + way).Disabled(ends)
}
