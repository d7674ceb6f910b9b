package ui

import (
	"errors"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/solver"
)

// fit finds the car that the readings came from, and what to fit to it.
type fit struct {
	app.Compo
	Bench bench
	State *fitting
	Next  bool // it is the next thing to do
}

// fitting is a fit that runs, or what came of it.
type fitting = errand[engine.FitResult]

// Render shows what is advised on, the button and what came of it.
func (f *fit) Render() app.UI {
	if f.Bench.cars().Err != nil {
		return app.P().Text("The base car cannot be solved: mend its points in Car, or start from a car like it.")
	}
	return app.Section().Class("block").Body(
		app.H2().Text("Fit"),
		f.outcome(),
		f.advise(),
		f.State.run("fit", button(f.word(), f.start).ID("fit").Class(when(f.Next && !f.holds(), "primary", ""))),
	)
}

// holds reports whether there is a fit of the study as it stands.
func (f *fit) holds() bool {
	return f.State.result != nil && model.FitsStill(f.State.of, f.Bench.document())
}

// word is what the button says.
func (f *fit) word() string {
	if f.State.result != nil {
		return "Fit again"
	}
	return "Fit the car to the readings"
}

// advise says on which part advice is wanted, and in what steps it comes.
func (f *fit) advise() app.UI {
	d, n := f.Bench.document(), f.Bench.numbers()
	a := model.AdviseOf(d, f.Bench.cars().Design)
	if a == nil {
		return nothing()
	}
	p, _, err := solver.FindParameter(f.Bench.cars().Design, a.Parameter)
	if err != nil {
		return app.P().Class("problem").Text(plain(err))
	}
	return app.Div().Class("row").Body(
		menu("advise", "Advice on the", a.Parameter, heights(f.Bench.cars().Design), func(ctx app.Context, key string) {
			f.Bench.edit(ctx, func() error {
				return f.Bench.session().EditAdvise(func(a *study.Advise) { a.Parameter = key })
			})
		}),
		&field{
			ID: "advise-step", Label: "in steps of", Unit: n.ValueUnit(p), Value: n.ValueNumber(d, p, a.Step),
			Set: func(ctx app.Context, text string) error {
				x, err := n.ParseValue(d, p, text)
				if err != nil {
					return err
				}
				if !(x > 0) {
					return errStep
				}
				return f.Bench.change(ctx, func() error {
					return f.Bench.session().EditAdvise(func(a *study.Advise) { a.Step = x })
				})
			},
		},
	)
}

// errStep is what a spacer without thickness is refused with.
var errStep = errors.New("a spacer has a thickness: more than 0")

// heights lists the parts that advice may be asked on.
func heights(design *solver.Design) []choice {
	var list []choice
	for _, p := range solver.Parameters(design) {
		if p.Quantity == solver.LengthQuantity && !strings.Contains(p.Key, ".") {
			list = append(list, choice{p.Key, p.Label})
		}
	}
	return list
}

func (f *fit) start(app.Context, app.Event) {
	doc := model.WithReadings(f.Bench.document(), f.Bench.cars().Design)
	if err := doc.ReadyToFit(); err != nil {
		f.State.refuse(err)
		return
	}
	f.State.start(f.Bench, calls.Fit, doc, nil, func(ctx app.Context, r *engine.FitResult) {
		f.Bench.Desk.ShowFit(r)
		f.Bench.Say(ctx, "Fitted: "+r.VerdictWords+".", nil)
		f.Bench.Changed(ctx)
	})
}
