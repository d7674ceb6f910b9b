package ui

import (
	"cmp"
	"fmt"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/worker"
	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/number"
)

// trade weighs toe change against a second aim: a front of designs, not one.
type trade struct {
	app.Compo
	Bench bench
	State *trading
}

// trading is a trade-off that is sought, or what came of it.
type trading struct {
	errand[engine.TradeOffResult]
	aim       string   // empty is the first
	ackermann *float64 // nil is the usual
}

// Render shows what is weighed, the front, and its designs.
func (t *trade) Render() app.UI {
	if t.Bench.cars().Err != nil {
		return app.P().Text("The base car cannot be solved: mend its points in Car first.")
	}
	aim := cmp.Or(t.State.aim, model.Aims[0].Key)
	var list []choice
	meaning := ""
	for _, a := range model.Aims {
		list = append(list, choice{a.Key, a.Label})
		if a.Key == aim {
			meaning = a.Meaning
		}
	}
	return app.Section().Class("block").Body(
		app.H2().Text("Trade-off"),
		app.P().Class("note").Text("Toe change against a second aim: "+meaning+". What is free, and its bounds, stand in Search."),
		app.Div().Class("row").Body(
			menu("aim", "Against", aim, list, func(_ app.Context, value string) { t.State.aim = value }),
			app.If(aim == "ackermann", func() app.UI { return t.percentage() }),
		),
		t.State.run("trade", button("Weigh them", t.start).ID("trade").Class("primary")),
		app.If(t.State.result != nil, func() app.UI { return t.outcome() }),
		cautionLine(),
	)
}

// percentage is the field of the Ackermann percentage asked for.
func (t *trade) percentage() app.UI {
	asked := float64(engine.UsualAckermann)
	if x := t.State.ackermann; x != nil {
		asked = *x
	}
	return &field{
		ID: "trade-ackermann", Label: "asked for", Unit: "%", Value: strconv.FormatFloat(asked, 'g', -1, 64),
		Set: func(_ app.Context, text string) error {
			x, err := parseBound(text)
			if err == nil {
				t.State.ackermann = x
			}
			return err
		},
	}
}

// start looks for the front in a worker. One that is stopped keeps what it has found.
func (t *trade) start(app.Context, app.Event) {
	doc := model.WithSearch(t.Bench.document(), t.Bench.cars().Design)
	o := engine.TradeOffOptions{Aim: cmp.Or(t.State.aim, model.Aims[0].Key), Ackermann: t.State.ackermann}
	params := worker.Params[engine.TradeOffOptions]{Study: doc, Options: o}
	t.State.start(t.Bench, calls.TradeOff, params, func(ctx app.Context, r *engine.TradeOffResult) {
		t.Bench.Say(ctx, number.Count(len(r.Designs), "design")+" between the least toe change and the least "+model.AimLabel(r.Aim)+".", nil)
	})
}

// outcome is the front as a picture and as a list.
func (t *trade) outcome() app.UI {
	r, n, d := t.State.result, t.Bench.numbers(), t.Bench.document()
	f := &front{
		Title:  "Toe change and " + model.AimLabel(r.Aim) + " of the designs",
		XLabel: model.AimLabel(r.Aim) + ", " + n.AmountUnit(r.AimUnit), YLabel: model.MinimisedLabel(r.Minimise, r.Weighted()) + ", " + n.ToeUnit(),
		Take: func(ctx app.Context, i int) { t.take(ctx, &r.Designs[i]) },
	}
	for i := range r.Designs {
		f.X = append(f.X, n.AimValue(d, r, float64(r.Designs[i].Aim)))
		f.Y = append(f.Y, n.ToeValue(degrees(r.Designs[i].Score)))
	}
	return app.Div().Class("answer").ID("designs").Body(
		app.If(t.State.of.Search != d.Search, func() app.UI {
			return app.P().Class("note").Text("Weighed before the last changes of the study.")
		}),
		f,
		app.P().Class("note").Text("Touch a design, or its button, and it becomes a candidate."),
		app.Ol().Class("plain").Body(app.Range(r.Designs).Slice(func(i int) app.UI { return t.design(&r.Designs[i], i) })),
	)
}

// design is a line of the list.
func (t *trade) design(p *engine.TradeOffPoint, i int) app.UI {
	r, n, d := t.State.result, t.Bench.numbers(), t.Bench.document()
	return app.Li().Class("choice-row").Body(
		app.Div().Body(
			app.Strong().Text(fmt.Sprintf("toe %s, %s %s", n.ToeText(degrees(p.Score)), model.AimLabel(r.Aim), n.AimText(d, r, float64(p.Aim)))),
			app.Span().Class("note").Text(model.InWords(d, t.Bench.cars(), p.Values)),
		),
		button("Make it a candidate", func(ctx app.Context, _ app.Event) { t.take(ctx, p) }, i, float64(p.Aim)),
	)
}

// take makes a design a candidate.
func (t *trade) take(ctx app.Context, p *engine.TradeOffPoint) {
	t.Bench.undoable(ctx, "A design of the front is a new candidate.", func() error { return t.Bench.Desk.Trade(t.State.result, p) })
}
