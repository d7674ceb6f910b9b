package ui

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// forge judges a candidate before its part is made: what tolerances do to it.
type forge struct {
	app.Compo
	Bench    bench
	State    *forging
	Measured *measuring
	Page     *job // that writes a form
}

// forging is a series that runs, or what came of it.
type forging = errand[engine.ToleranceResult]

// Render shows the tolerances and the series of cars.
func (f *forge) Render() app.UI {
	if f.Bench.cars().Err != nil {
		return app.P().Text("The base car cannot be solved: mend its points in Car first.")
	}
	return app.Div().Class("forge").Body(
		app.P().Class("note").Text("A forging serves many cars. Builds a series of cars that differ within the tolerances, and counts those whose curve still passes."),
		f.Bench.fitUse(),
		f.limit(),
		f.run(),
		f.outcome(),
		f.measured(),
		f.tolerances(),
		cautionLine(),
	)
}

const aboutTolerance = "By how much a part or a place on the car may be off, to either side. All values within are taken as equally likely; a normal spread is read as three standard deviations."

// tolerances lists by how much parts may be off.
func (f *forge) tolerances() app.UI {
	list := f.Bench.document().Tolerances
	s := f.Bench.session()
	return app.Section().Class("block").Body(
		app.H2().Body(explain("Tolerances", aboutTolerance)),
		f.Bench.borrowedList("tolerances"),
		only(len(list) == 0, func() app.UI {
			return app.Div().Body(
				app.P().Text("None yet. Say by how much the part and the car may be off."),
				button("Start with usual ones", func(ctx app.Context, _ app.Event) { f.Bench.edit(ctx, s.AddUsualTolerances) }).ID("usual-tolerances"),
			)
		}),
		only(len(list) > 0, func() app.UI {
			return app.Table().Class("asked tolerances").Body(
				app.THead().Body(app.Tr().Body(heads("What", "By", "Differs", "")...)),
				app.TBody().Body(app.Range(list).Slice(func(i int) app.UI { return &tolerance{Bench: f.Bench, Index: i, Tolerance: list[i]} })),
			)
		}),
		&picker{
			ID: "tolerance", Label: "Add a tolerance", Design: f.Bench.cars().Design,
			Taken: func(key string) bool { return hasTolerance(list, key) },
			Pick:  func(ctx app.Context, key string) { f.Bench.edit(ctx, func() error { return s.AddTolerance(key) }) },
		},
	)
}

func hasTolerance(list []study.Tolerance, key string) bool {
	for _, t := range list {
		if t.Parameter == key {
			return true
		}
	}
	return false
}

// limit shows what a car must keep to pass.
func (f *forge) limit() app.UI {
	n, y := f.Bench.numbers(), model.YieldOf(f.Bench.document())
	return app.Div().Class("row").Body(
		&field{
			ID: "yield-limit", Label: "A car passes with a peak of at most", Unit: n.ToeUnit(), Value: n.ToeNumber(solver.Deg(y.Limit)),
			Set: func(ctx app.Context, text string) error {
				deg, err := n.ParseToe(text)
				if err != nil {
					return err
				}
				return f.Bench.change(ctx, func() error {
					return f.Bench.session().EditYield(func(y *study.Yield) { y.Limit = deg })
				})
			},
		},
		f.staticToe(y.KeepToe),
	)
}

// Ways of a series with static toe, as the menu's values.
const (
	toeReset = "re-set"
	toeBuilt = "as-built"
)

// staticToe asks whether each car of the series is aligned before it is judged.
func (f *forge) staticToe(kept bool) app.UI {
	value := toeReset
	if kept {
		value = toeBuilt
	}
	return menu("static-toe", "Static toe of each car", value,
		[]choice{{toeReset, "set again"}, {toeBuilt, "as built: rods of the drawn length"}},
		func(ctx app.Context, way string) {
			f.Bench.edit(ctx, func() error {
				return f.Bench.session().EditYield(func(y *study.Yield) { y.KeepToe = way == toeBuilt })
			})
		})
}

// run shows the button that builds the series of the selected car.
func (f *forge) run() app.UI {
	car := f.Bench.Desk.Selected()
	start := app.Button().Type("button").ID("forge").Class("primary").OnClick(f.start).Body(app.Span().Class("clipped").Text("Build the series of " + carName(car)))
	return f.State.run("forge", start.Disabled(len(f.Bench.document().Tolerances) == 0))
}

// start builds the series in a worker.
func (f *forge) start(app.Context, app.Event) {
	car := f.Bench.Desk.Selected()
	o := engine.ToleranceOptions{Candidate: car.Name, Limit: new(model.YieldOf(f.Bench.document()).Limit)}
	f.State.start(f.Bench, calls.Tolerance, f.Bench.document(), o, func(ctx app.Context, r *engine.ToleranceResult) {
		f.Bench.Desk.ShowBand(r)
		f.Bench.Say(ctx, yieldText(r), nil)
		f.Bench.Changed(ctx)
	})
}

// yieldText says how many cars pass, and how sure that is.
func yieldText(r *engine.ToleranceResult) string {
	y := r.Yield
	if y == nil {
		return "The series is built."
	}
	text := fmt.Sprintf("%.1f %% of %s pass (%.1f to %.1f %% by the number of cars).", 100*float64(y.Share), number.Count(r.Cars, "car"), 100*float64(y.Low), 100*float64(y.High))
	if !y.AsDrawn {
		text += " The car as drawn does not pass itself."
	}
	return text
}
