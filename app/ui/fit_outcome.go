package ui

import (
	"math"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/solver"
)

// outcome shows what a fit comes to: a sentence, what to fit on either side, what is to be
// looked at, and what can be done with it.
func (f *fit) outcome() app.UI {
	r := f.State.result
	if r == nil {
		return nothing()
	}
	still := f.holds()
	used, of := model.FitCount(f.State.of, r)
	return app.Div().ID("fitted").Class("answer").Body(
		app.P().Class("note").Text(number.Count(of, "reading")+", "+number.Decimal(float64(used), 0)+" in the fit"),
		only(!still, func() app.UI {
			return app.P().Class("note").Text("Fitted before the last changes of the car or its readings.")
		}),
		app.P().ID("verdict").Text(verdictSigns[r.Verdict]+" "+sentence(r.VerdictWords)),
		app.Div().Class("advised").Body(app.Range(solver.Sides).Slice(func(i int) app.UI { return f.side(solver.Sides[i]) })),
		app.Div().Class("deeds").Body(
			only(len(r.Advice) > 0, func() app.UI {
				return button(f.tryWord(r), f.try).ID("take-advice").Class(when(f.Next && still, "primary", ""))
			}),
			only(still, func() app.UI { return button("Take the fitted car as my car", f.Bench.takeFit).ID("take-fit") }),
		),
		app.Ul().Class("remarks").Body(app.Range(r.Remarks).Slice(func(i int) app.UI { return app.Li().Text(sentence(r.Remarks[i])) })),
		app.P().Class("note").Text("Bands hold 90 % of the cars that fit the readings. A stack lengthens the stud's lever: its thread must reach through, and its bending wants looking at before it is driven."),
		cautionLine(),
	)
}

// try makes the advice a candidate.
func (f *fit) try(ctx app.Context, _ app.Event) {
	a := model.AdviseOf(f.Bench.document(), f.Bench.cars().Design)
	f.Bench.undoable(ctx, "The advice is a candidate.", func() error { return f.Bench.Desk.Advised(a.Parameter, f.State.result) })
}

// verdictSigns stand before what a fit comes to.
var verdictSigns = map[string]string{"explained": "✓", "not explained": "✗", "too good": "⚠"}

// tryWord says of how many sides the candidate is.
func (f *fit) tryWord(r *engine.FitResult) string {
	if len(r.Advice) > 1 {
		return "Try both sides"
	}
	return "Try it"
}

// side shows what to fit on a side.
func (f *fit) side(side solver.Side) app.UI {
	d, n := f.Bench.document(), f.Bench.numbers()
	s, ok := model.SpacersOf(model.AdviseOf(d, f.Bench.cars().Design), f.State.result, side.String())
	if !ok {
		return nothing()
	}
	length := func(x float64) string { return n.Length(d.Units.Millimetres(x)) }
	return app.Div().Class("advised-side").ID("advised-"+side.String()).Body(
		app.H3().Text(upperFirst(side.String())+": "+model.SpacersText(d, &s)),
		app.P().Body(app.Strong().Text(length(s.Value)), app.Text("; exact "+length(s.Best))),
		app.P().Text("Band "+length(s.Low)+" to "+length(s.High)+"."),
		only(s.Outside, func() app.UI {
			return app.P().Class("warning").Text("⚠ The whole spacers lie outside their own band: a thinner one would come nearer.")
		}),
		only(s.AtBound, func() app.UI { return app.P().Class("warning").Text("⚠ At the end of what advice may take.") }),
		app.P().Text("Leaves "+f.toe(s.Expect.Peak.Value)+" at most ("+f.toe(s.Expect.Peak.Low)+" to "+f.toe(s.Expect.Peak.High)+")."),
		app.P().Text(f.turns(&s, length)),
	)
}

func (f *fit) toe(deg engine.Number) string {
	return f.Bench.numbers().ToeText(solver.Deg(math.Abs(float64(deg))))
}

// turns says how to bring static toe back with the adjuster.
func (f *fit) turns(s *model.Spacers, length func(float64) string) string {
	way := "longer, its ends further apart"
	if s.TieRod < 0 {
		way = "shorter, its ends nearer"
	}
	by := length(math.Abs(s.TieRod))
	switch {
	case !s.Turns.Valid():
		return "Then make the rod " + by + " " + way + ", and set toe. Its turns are told once the thread's pitch is stated in Car."
	case math.Abs(float64(s.Turns)) < leastTurns:
		return "Toe stays as it is set: the adjuster need not be turned."
	}
	return "Then turn the adjuster " + number.Decimal(math.Abs(float64(s.Turns)), 1) + " turns so that the rod gets " + way + " (" + by + "), and set toe."
}

// leastTurns of an adjuster are worth a wrench.
const leastTurns = 0.05
