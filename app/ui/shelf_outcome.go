package ui

import (
	"fmt"
	"slices"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/engine"
)

// ranked is how many combinations are listed.
const ranked = 10

// outcome shows the choices, the undominated first.
func (s *shelf) outcome() app.UI {
	r := s.State.result
	if r == nil {
		return nil
	}
	n := s.Bench.numbers()
	return app.Section().Class("block answer").ID("choices").Aria("label", "What came of it").Body(
		app.If(s.State.of != s.Bench.document(), func() app.UI {
			return app.P().Class("note").Text("Ranked before the last changes of the study.")
		}),
		s.picture(r),
		app.P().Class("note").Text("Touch one, or its button, and it becomes a candidate."),
		app.H2().Text("Nothing betters these"),
		app.P().Class("note").Text(fmt.Sprintf("By price. %s toe change less target, %s.", figureName(r.Figure), n.ToeUnit())),
		s.list(r.Undominated, r.Figure),
		app.H2().Text("Flattest"),
		s.list(r.Best[:min(ranked, len(r.Best))], r.Figure),
		cautionLine(),
	)
}

// figureName is how a figure of package engine is called on the page.
func figureName(figure string) string {
	if figure == "peak" {
		return "Peak"
	}
	return "RMS"
}

// list shows choices, each with a way to make it a candidate.
func (s *shelf) list(choices []engine.Choice, figure string) app.UI {
	return app.Ol().Class("plain").Body(app.Range(choices).Slice(func(i int) app.UI {
		c := &choices[i]
		return app.Li().Class("choice-row").Body(
			app.Div().Body(
				app.Strong().Text(model.ChoiceName(c)),
				app.Span().Class("note").Text(fmt.Sprintf("toe %s, price %.2f", s.Bench.numbers().ToeNumber(degrees(of(c, figure))), c.Price)),
			),
			button("Make it a candidate", func(ctx app.Context, _ app.Event) { s.take(ctx, c) }, model.ChoiceName(c), i),
		)
	}))
}

// of returns the figure of a choice by which it is ranked.
func of(c *engine.Choice, figure string) engine.Number {
	if figure == "peak" {
		return c.Peak
	}
	return c.RMS
}

// picture shows price across and toe change upward.
func (s *shelf) picture(r *engine.ChooseResult) app.UI {
	n := s.Bench.numbers()
	list := slices.Concat(r.Undominated, r.Best)
	f := &front{
		Title: "Price and toe change of the combinations", XLabel: "price", YLabel: "toe change, " + n.ToeUnit(),
		Take: func(ctx app.Context, i int) { s.take(ctx, &list[i]) },
	}
	for i := range list {
		f.X = append(f.X, list[i].Price)
		f.Y = append(f.Y, n.ToeValue(degrees(of(&list[i], r.Figure))))
	}
	return f
}
