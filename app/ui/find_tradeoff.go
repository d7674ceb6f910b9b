package ui

import (
	"cmp"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/number"
)

// trade weighs toe change against a second aim: a front of designs, not one.
type trade struct {
	app.Compo
	Bench bench
	State *trading
	Asked *question
}

// trading is a trade-off that is sought, or what came of it.
type trading struct {
	errand[engine.TradeOffResult]
	aim       string   // empty is the first
	ackermann *float64 // nil is the usual
	picked    int      // number of the design that is pointed at
}

// Render shows the question, what is weighed, the front, and its designs.
func (t *trade) Render() app.UI {
	if t.Bench.cars().Err != nil {
		return t.Bench.cannotFind()
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
	return app.Div().Class("way").Body(
		t.Bench.fitUse(),
		t.Asked,
		app.H2().Text("Toe change against a second aim"),
		app.Div().Class("row").Body(
			menu("aim", "Against", aim, list, func(_ app.Context, value string) { t.State.aim = value }),
			only(aim == "ackermann", func() app.UI { return t.percentage() }),
		),
		app.P().Class("note").Text(sentence(meaning)),
		only(t.shown() != nil, func() app.UI { return t.outcome() }),
		app.Div().Class("result").Body(
			only(t.shown() != nil, func() app.UI { return t.pick() }),
			t.State.run("trade", t.starter()),
		),
	)
}

// shown is what there is to see: the designs found so far, or in the end all of them.
func (t *trade) shown() *engine.TradeOffResult {
	if t.State.job.running() {
		return t.State.job.progress.Designs
	}
	return t.State.result
}

// starter is the button that weighs: the one to press until there are designs to take.
func (t *trade) starter() app.HTMLButton {
	b := button("Weigh them", t.start).ID("trade")
	if t.State.result == nil {
		b = b.Class("primary")
	}
	return b
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
	t.State.picked = 0
	t.Asked.State.check.rest()
	t.State.start(t.Bench, calls.TradeOff, doc, o, func(ctx app.Context, r *engine.TradeOffResult) {
		if r.Stopped {
			t.Bench.Say(ctx, "Stopped: "+number.Count(len(r.Designs), "design")+" so far, which are kept.", nil)
			return
		}
		t.Bench.Say(ctx, number.Count(len(r.Designs), "design")+" between the least toe change and the least "+model.AimLabel(r.Aim)+".", nil)
	})
}

// outcome is the front as a picture and as a list.
func (t *trade) outcome() app.UI {
	r, n, d := t.shown(), t.Bench.numbers(), t.Bench.document()
	f := &front{
		Title:  "Toe change and " + model.AimLabel(r.Aim) + " of the designs",
		XLabel: model.AimLabel(r.Aim) + ", " + n.AmountUnit(r.AimUnit), YLabel: model.MinimisedLabel(r.Minimise, r.Weighted()) + ", " + n.ToeUnit(),
		Picked: t.State.picked, Pick: func(_ app.Context, i int) { t.State.picked = i },
	}
	for i := range r.Designs {
		f.X = append(f.X, n.AimValue(d, r, float64(r.Designs[i].Aim)))
		f.Y = append(f.Y, n.ToeValue(degrees(r.Designs[i].Score)))
	}
	return app.Div().ID("designs").Body(
		only(t.State.result == r && t.State.of.Search != d.Search, func() app.UI {
			return app.P().Class("note").Text("Weighed before the last changes of the question.")
		}),
		f,
		app.Table().Class("ranked").Body(
			app.THead().Body(app.Tr().Body(heads(loadHead(n, r.Designs[0].Loads, f.YLabel, f.XLabel, "With", "")...)...)),
			app.TBody().Body(app.Range(r.Designs).Slice(func(i int) app.UI { return t.design(&r.Designs[i], i) })),
		),
	)
}

// design is a row of the table.
func (t *trade) design(p *engine.TradeOffPoint, i int) app.UI {
	r, n, d := t.shown(), t.Bench.numbers(), t.Bench.document()
	return app.Tr().Body(
		app.Td().Text(n.ToeNumber(degrees(p.Score))),
		app.Td().Text(n.Amount(float64(p.Aim), r.AimUnit, d.Units)),
		app.Td().Class("words").Text(model.InWords(d, t.Bench.cars(), p.Values)),
		loadCell(n, r.Designs[0].Loads, p.Loads),
		app.Td().Class("more").Body(keepButton(func(ctx app.Context) { t.take(ctx, p) }, i, float64(p.Aim))),
	)
}

// pick is the design that is pointed at.
func (t *trade) pick() app.UI {
	r, n, d := t.shown(), t.Bench.numbers(), t.Bench.document()
	p := &r.Designs[min(t.State.picked, len(r.Designs)-1)]
	return app.Div().Class("outcome").Body(
		app.Strong().Class("figure").Text(n.ToeNumber(degrees(p.Score))),
		app.P().Class("note").Body(
			app.Text(model.MinimisedLabel(r.Minimise, r.Weighted())+", "+n.ToeUnit()+"; "+model.AimLabel(r.Aim)+" "+n.AimText(d, r, float64(p.Aim))),
			app.Span().Text(model.InWords(d, t.Bench.cars(), p.Values)),
		),
		button("Make it a candidate", func(ctx app.Context, _ app.Event) { t.take(ctx, p) }, t.State.picked, float64(p.Aim)).ID("take-design").Class("primary"),
	)
}

// take makes a design a candidate.
func (t *trade) take(ctx app.Context, p *engine.TradeOffPoint) {
	r := t.shown()
	t.Bench.undoable(ctx, "A design of the front is a new candidate.", func() error { return t.Bench.Desk.Trade(r, p) })
}
