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
	Asked  *question
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

// Render shows the question, what is laid along the axes, the map, and what it says in
// words.
func (p *mapPanel) Render() app.UI {
	if p.Bench.cars().Err != nil {
		return p.Bench.cannotFind()
	}
	return app.Div().Class("way").Body(
		p.Bench.fitUse(),
		p.Asked,
		app.Div().Class("row", "axes").Body(app.H2().Text("Toe change over"), p.axes()),
		only(p.State.fault != "", func() app.UI { return app.P().Class("problem").Role("alert").Text(p.State.fault) }),
		&mapPicture{Bench: p.Bench, State: p.State, Frames: p.Frames},
		p.words(),
		app.P().Class("note").Text("Light is flat. "+p.legend()),
		app.Div().Class("result").Body(p.here()),
	)
}

// legend says what stands on the map.
func (p *mapPanel) legend() string {
	text := "Contour lines " + model.In(p.Bench.numbers().ToeUnit()) + ". Touch a place, or take the arrow keys, and " + carName(p.Bench.Desk.Selected()) +
		" goes there. Filled marks lie on this map; open ones are cars that differ in more than the two parameters."
	if t := p.State.shown; t != nil && len(t.Limits()) > 0 {
		text += " Hatched is where a limit is broken."
	}
	return text
}

// here says where the selected car stands on the map, and how good it is there.
func (p *mapPanel) here() app.UI {
	t, car := p.State.shown, p.Bench.Desk.Selected()
	if t == nil || car.Err != nil {
		return app.P().Text("The map is being drawn.")
	}
	figure := model.RMSFigure
	if t.Figure == "peak" {
		figure = model.PeakFigure
	}
	n := p.Bench.numbers()
	at := func(a *model.MapAxis) string { return p.value(a, p.Bench.Desk.ValueOf(car.Index, a.Key)) }
	return app.Div().Class("outcome").ID("map-here").Body(
		app.Strong().Class("figure").Text(n.ToeNumber(solver.Angle(figure.Worse(car)))),
		app.P().Class("note").Body(
			app.Text(carName(car)+", "+figure.Label()+": "+at(&t.X)+", "+at(&t.Y)),
			app.Span().Text("Limits: "+p.Bench.Desk.Question().Limits),
		),
		p.deeds(t, car),
	)
}

// deeds are what can be done on the map beside moving about it.
func (p *mapPanel) deeds(t *model.Terrain, car *model.Car) app.UI {
	x, y, _, least := t.Least()
	return app.Div().Class("deeds").Body(
		only(car.Index > 0, func() app.UI {
			return button("Keep a copy", func(ctx app.Context, _ app.Event) {
				p.Bench.undoable(ctx, "A copy is kept as a candidate; go on with it.", func() error { return p.Bench.Desk.Duplicate(car.Index) })
			}, car.Index).ID("map-keep")
		}),
		only(least, func() app.UI {
			return button("Go to the least", func(ctx app.Context, _ app.Event) { mapMove{p.Bench, t}.to(ctx, x, y) }, x, y).ID("map-best").Class("primary")
		}),
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
		return nothing() // the foot says so
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
	return app.P().ID("map-least").Text(fmt.Sprintf("Least %s toe change on the map%s, at the ring: %s, with %s and %s.",
		figureName(t.Figure), holding(t.Limits()), n.ToeText(least), p.value(&t.X, x), p.value(&t.Y, y)))
}

// holding says that the least holds the limits, where there are any.
func holding(limits []study.Limit) string {
	if len(limits) == 0 {
		return ""
	}
	return " within the limits"
}

// value names a value of an axis.
func (p *mapPanel) value(a *model.MapAxis, x float64) string {
	return a.Parameter.Label + " " + p.Bench.numbers().Value(p.Bench.document(), a.Parameter, x)
}
