package ui

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
	"toewright/solver"
)

// mapPanel shows what lies about the selected car: the toe change over two parameters.
type mapPanel struct {
	app.Compo
	Bench  bench
	State  *mapping
	Frames frames
}

// OnMount lets the map follow the sheet, frame by frame.
func (p *mapPanel) OnMount(app.Context) {
	if p.Frames != nil {
		p.Frames.alongside(func() { p.State.follow(p.Bench) })
		p.Frames.request()
	}
}

// OnDismount lets it rest.
func (p *mapPanel) OnDismount() {
	if p.Frames != nil {
		p.Frames.alongside(nil)
	}
}

// Render shows what is laid along the axes, the map, and what it says in words.
func (p *mapPanel) Render() app.UI {
	if err := p.Bench.cars().Err; err != nil {
		return app.P().Text("The base car cannot be solved: mend its points in Car first.")
	}
	return app.Div().Class("around").Body(
		app.P().Class("note").Text("The toe change over two parameters of the selected car. Light is flat: the heights of the two balls of a tie rod make up for each other along a valley. It follows every drag on the sheet."),
		p.Bench.fitUse(),
		p.axes(),
		app.If(p.State.fault != "", func() app.UI { return app.P().Class("problem").Role("alert").Text(p.State.fault) }),
		&mapPicture{Bench: p.Bench, State: p.State, Frames: p.Frames},
		p.words(),
		cautionLine(),
	)
}

// axes are the menus of the two parameters.
func (p *mapPanel) axes() app.UI {
	design := p.Bench.cars().Design
	x, y := model.MapKeys(p.Bench.document(), design, p.State.x, p.State.y)
	list := func(but string) (out []choice) {
		for _, q := range solver.Parameters(design) {
			if q.Key != but {
				out = append(out, choice{q.Key, q.Label})
			}
		}
		return out
	}
	set := func(to *string) func(app.Context, string) {
		return func(ctx app.Context, key string) {
			p.State.x, p.State.y = x, y
			*to = key
			p.Bench.Changed(ctx)
		}
	}
	return app.Div().Class("row").Body(
		menu("map-x", "Across", x, list(y), set(&p.State.x)),
		menu("map-y", "Upward", y, list(x), set(&p.State.y)),
	)
}

// words say what the map shows, and where its least toe change is.
func (p *mapPanel) words() app.UI {
	t := p.State.shown
	if t == nil {
		return app.P().Text("The map is being drawn.")
	}
	n := p.Bench.numbers()
	if t.Awaited() {
		return app.P().Text("The limits are being looked at, for the least toe change that holds them.")
	}
	x, y, least, ok := t.Least()
	if !ok && len(t.Limits()) > 0 {
		return app.P().Class("problem").Text("Nowhere on this map does a car that reaches its window of travel hold all limits: choose other parameters, or ease a limit in Find.")
	}
	if !ok {
		return app.P().Class("problem").Text("Nowhere on this map does the car reach its window of travel: choose other parameters or a smaller window in Find.")
	}
	goTo := func(ctx app.Context, _ app.Event) { mapMove{p.Bench, t}.to(ctx, x, y) }
	return app.Div().Class("map-words").Body(
		app.P().ID("map-least").Text(fmt.Sprintf("Least %s toe change on the map%s, at the ring: %s, with %s and %s.",
			figureName(t.Figure), holding(t.Limits()), n.ToeText(least), p.value(&t.X, x), p.value(&t.Y, y))),
		button("Go there", goTo, x, y).ID("map-best"),
		app.P().Class("note").Text("Contour lines "+model.In(n.ToeUnit())+". Touch a place, or take the arrow keys, and "+carName(p.Bench.Desk.Selected())+" goes there. Filled marks lie on this map; open ones are cars that differ in more than the two parameters."+p.limits(t.Limits())),
	)
}

// holding says that the least holds the limits, where there are any.
func holding(limits []study.Limit) string {
	if len(limits) == 0 {
		return ""
	}
	return " within the limits"
}

// limits says what the hatching means.
func (p *mapPanel) limits(list []study.Limit) string {
	if len(list) == 0 {
		return ""
	}
	return " Hatched is where a limit is broken."
}

// value names a value of an axis.
func (p *mapPanel) value(a *model.MapAxis, x float64) string {
	return a.Parameter.Label + " " + p.Bench.numbers().Value(p.Bench.document(), a.Parameter, x)
}
