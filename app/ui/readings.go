package ui

import (
	"cmp"
	"fmt"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/store"
)

// readings enters what the gauge says and fits the car to it.
type readings struct {
	app.Compo
	Bench  bench
	State  *reading
	Typed  func()             // to be called after any change of what is being typed
	Habits func(store.Habits) // keeps how the reader works

	deaf    func()
	pending []func(app.Context) // what keys do that came in since the page was drawn
	leading bool                // the keyboard goes to the field that is typed
}

// reading is what is being typed, and the fit. It outlives the panel.
type reading struct {
	keypad model.Keypad
	habits store.Habits
	fit    fitting
}

// work has the keypad follow how the reader works.
func (r *reading) work(h store.Habits) {
	r.habits = h
	r.keypad.SetFine(h.Fine)
}

const aboutReadings = "What the gauge reads at each wheel travel, toe-in positive. Where the gauge was zeroed does not matter: its zero is found with the rest, one for each side of a run. Springs out, wheels hanging on stands rated for the car."

// OnMount listens to the keys of keyboards and of gauges that type, and on a phone brings
// the row that is typed between curves and keys.
func (r *readings) OnMount(ctx app.Context) {
	r.listen(ctx)
	if app.Window().Call("matchMedia", "(max-width: 559px)").Get("matches").Bool() {
		ctx.Defer(func(app.Context) { reveal(".pad-input.current") })
	}
}

// OnDismount lets go of them.
func (r *readings) OnDismount() { r.deaf() }

// Render shows the run that is typed, its rows and the fit.
func (r *readings) Render() app.UI {
	runs := model.Runs(r.Bench.document())
	k := &r.State.keypad
	k.Settle(r.Bench.session())
	return app.Div().Class("readings").Body(
		app.H2().Text("Run sheet"),
		r.Bench.borrowedList("readings"),
		r.choose(runs),
		only(len(runs) > 0, func() app.UI { return r.current(runs[k.Run]) }),
		&fit{Bench: r.Bench, State: &r.State.fit, Next: len(runs) > 0 && k.Done()},
		only(len(runs) > 0, func() app.UI { return &keepCar{Bench: r.Bench} }),
		readingsTable(r.Bench),
		app.P().Class("note").Text(aboutReadings),
	)
}

// choose shows the runs, and begins one.
func (r *readings) choose(runs []model.Run) app.UI {
	return app.Div().Class("runs").Body(
		app.If(len(runs) == 0, func() app.UI {
			return app.P().ID("no-readings").Text("No readings yet. Begin a run, type the stack that is on the car, and then travel, left and right; or take a table.")
		}).Else(func() app.UI {
			return app.Div().Class("segments").Role("group").Aria("label", "Runs of the gauge").Body(
				app.Range(runs).Slice(func(i int) app.UI {
					return app.Button().Type("button").ID("run-"+strconv.Itoa(i)).Aria("pressed", i == r.State.keypad.Run).
						Text(r.runName(i, runs[i])).OnClick(func(ctx app.Context, _ app.Event) {
						r.typed(func(k *model.Keypad) { k.Choose(r.Bench.session(), i) })
					}, app.EventScope(i))
				}),
			)
		}),
		button("New run", r.begin).ID("new-run").Class(when(len(runs) == 0, "primary", "")),
	)
}

// when returns one of two words.
func when(ok bool, yes, no string) string {
	if ok {
		return yes
	}
	return no
}

// runName says which parts were on the car and which way the run went.
func (r *readings) runName(i int, run model.Run) string {
	set := &r.Bench.document().Readings[run.First()]
	name := cmp.Or(set.Note, "as measured")
	if st, ok := r.Bench.session().StackOf(run); ok && set.Note == "" && st.Value != 0 {
		name = r.lowered(st.Value)
	}
	if set.Direction != "" {
		name += ", into " + set.Direction
	}
	if set.Purpose == "verify" {
		name += ", to verify"
	}
	return fmt.Sprintf("Run %d, %s", i+1, name)
}

// lowered says by how much a ball stands lower or higher than as measured.
func (r *readings) lowered(by float64) string {
	n, mm := r.Bench.numbers(), r.Bench.document().Units.Millimetres
	if by < 0 {
		return n.TravelNumber(mm(-by)) + " down"
	}
	return n.TravelNumber(mm(by)) + " up"
}

// begin begins a run.
func (r *readings) begin(ctx app.Context, _ app.Event) {
	r.Bench.edit(ctx, func() (err error) {
		r.typed(func(k *model.Keypad) { err = k.Begin(r.Bench.session()) })
		return err
	})
}

// current shows a run: what was on the car, the rows, the keys and its gauge.
func (r *readings) current(run model.Run) app.UI {
	found := run.Findings(r.Bench.document())
	return app.Section().Class("run-sheet").Aria("label", "The run").Body(
		r.stack(run),
		r.rows(run),
		only(len(found) > 0, func() app.UI {
			return app.Ul().Class("findings").Body(app.Range(found).Slice(func(i int) app.UI { return r.Bench.slip(found[i], false, nil) }))
		}),
		r.pad(),
		&gauge{Bench: r.Bench, Run: run, Fine: r.State.habits.Fine, SetFine: func(fine bool) { r.habit(store.Habits{LeftHanded: r.State.habits.LeftHanded, Fine: fine}) }},
		button("Remove this run", func(ctx app.Context, _ app.Event) {
			r.Bench.undoable(ctx, "The run is removed.", func() error { return r.Bench.session().RemoveRun(run) })
		}, run.First()).ID("remove-run"),
	)
}

// habit takes up another way of working.
func (r *readings) habit(h store.Habits) {
	r.State.work(h)
	r.Habits(h)
	r.Typed()
}

// stack says how high the part stood by which runs differ.
func (r *readings) stack(run model.Run) app.UI {
	st, ok := r.Bench.session().StackOf(run)
	if !ok {
		return nothing()
	}
	return app.Div().Class("stack").Body(
		app.Label().For("pad-Stack").Text(upperFirst(st.Label)+", up positive"),
		app.Span().Class("field-box").Body(r.padInput(model.StackField), app.Span().Class("unit").Text(r.Bench.numbers().LengthUnit())),
	)
}
