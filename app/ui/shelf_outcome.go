package ui

import (
	"fmt"
	"slices"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/plot"
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
		app.Raw(s.picture(r)),
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

// The size of the picture of choices, in pixels.
const shelfWidth, shelfHeight = 360.0, 240.0

// picture shows price across and toe change upward, the undominated joined by the line
// beyond which there is nothing.
func (s *shelf) picture(r *engine.ChooseResult) string {
	n := s.Bench.numbers()
	var prices, toes []float64
	for _, c := range slices.Concat(r.Undominated, r.Best) {
		prices = append(prices, c.Price)
		toes = append(toes, n.ToeValue(degrees(of(&c, r.Figure))))
	}
	x, _ := plot.DomainOf(prices, []float64{0})
	y, _ := plot.DomainOf(toes, []float64{0})
	c := plot.Chart{
		Area: plot.Box(0, 0, shelfWidth, shelfHeight), Size: chartText, Along: plot.Horizontal,
		X: plot.ChartAxis{Domain: x.Widen(1).Nice(6), Label: "price"},
		Y: plot.ChartAxis{Domain: y.Widen(1e-3).Nice(6), Label: "toe change, " + n.ToeUnit()},
	}
	p := plot.Picture{Width: shelfWidth, Height: shelfHeight}
	p.Chart(c)
	f := c.Frame()
	front := plot.Undominated(prices, toes)
	p.Draw("thin", f.AppendStaircase(nil, prices, toes, front))
	p.Draw("mark s0", f.AppendMarkers(nil, plot.Disc, 3, prices, toes, 1))
	return string(plot.Document{Title: "Price and toe change of the combinations", Picture: p}.AppendInline(nil))
}
