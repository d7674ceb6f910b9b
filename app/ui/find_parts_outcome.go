package ui

import (
	"fmt"
	"slices"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/engine"
)

// ranked is how many of the flattest combinations are listed.
const ranked = 10

// choices are the combinations that are shown: those that nothing betters in price and toe
// change, then the flattest of the others.
func (s *shelving) choices() (list []*engine.Choice) {
	names := map[string]bool{}
	add := func(from []engine.Choice) {
		for i := range from {
			if name := model.ChoiceName(&from[i]); !names[name] {
				names[name] = true
				list = append(list, &from[i])
			}
		}
	}
	add(s.result.Undominated)
	add(s.result.Best[:min(ranked, len(s.result.Best))])
	return list
}

// outcome shows the combinations, those that nothing betters first.
func (s *shelf) outcome() app.UI {
	r, list := s.State.result, s.State.choices()
	return app.Section().ID("choices").Aria("label", "What came of it").Body(
		app.H2().Text(fmt.Sprintf("%d of %d combinations go together", r.Built, r.Tried)),
		only(s.State.of != s.Bench.document(), func() app.UI {
			return app.P().Class("note").Text("Ranked before the last changes of the study.")
		}),
		only(len(r.Conflict) > 0, func() app.UI { return s.conflict(r.Conflict) }),
		only(len(list) > 0, func() app.UI { return s.picture(list) }),
		only(len(list) > 0, func() app.UI { return s.table(list) }),
	)
}

// conflict says which limits no combination holds together.
func (s *shelf) conflict(list []engine.BrokenLimit) app.UI {
	return app.Ul().Class("remarks").Body(app.Range(list).Slice(func(i int) app.UI {
		return app.Li().Class("warning").Text(fmt.Sprintf("No combination holds all limits: %s is broken by %.0f %% of them.",
			model.LimitNamed(s.Bench.document(), list[i].Name), 100*float64(list[i].Share)))
	}))
}

// figureName is how a figure of package engine is called on the page.
func figureName(figure string) string {
	if figure == "peak" {
		return "Peak"
	}
	return "RMS"
}

// of returns the figure of a choice by which it is ranked.
func of(c *engine.Choice, figure string) engine.Number {
	if figure == "peak" {
		return c.Peak
	}
	return c.RMS
}

// picture shows price across and toe change upward.
func (s *shelf) picture(list []*engine.Choice) app.UI {
	n, r := s.Bench.numbers(), s.State.result
	f := &front{
		Title: "Price and toe change of the combinations", XLabel: "price", YLabel: figureName(r.Figure) + " toe change, " + n.ToeUnit(),
		Picked: s.State.picked, Pick: func(_ app.Context, i int) { s.State.picked = i },
	}
	for _, c := range list {
		f.X = append(f.X, c.Price)
		f.Y = append(f.Y, n.ToeValue(degrees(of(c, r.Figure))))
	}
	return app.Div().Body(f, app.P().Class("note").Text("Each dot a combination that holds the limits. On the line: none is both cheaper and better. Touch one to point at it."))
}

// table lists the combinations, each with a way to make it a candidate.
func (s *shelf) table(list []*engine.Choice) app.UI {
	n := s.Bench.numbers()
	return app.Table().Class("ranked").Body(
		app.Caption().Text("Toe change "+model.In(n.ToeUnit())),
		app.THead().Body(app.Tr().Body(heads(loadHead(n, list[0].Loads, "Parts", "Price", "Peak", "RMS", "Least to spare", "")...)...)),
		app.TBody().Body(app.Range(list).Slice(func(i int) app.UI {
			c := list[i]
			return app.Tr().Body(
				app.Td().Class("words").Text(model.ChoiceName(c)),
				app.Td().Text(fmt.Sprintf("%.2f", c.Price)),
				app.Td().Text(n.ToeNumber(degrees(c.Peak))),
				app.Td().Text(n.ToeNumber(degrees(c.RMS))),
				app.Td().Text(model.LeastToSpare(s.Bench.document(), c.Limits)),
				loadCell(n, list[0].Loads, c.Loads),
				app.Td().Class("more").Body(keepButton(func(ctx app.Context) { s.take(ctx, c) }, model.ChoiceName(c), i)),
			)
		})),
	)
}

// loadHead puts before the last head of a table that of the load by which its cars are told
// apart, where there is one.
func loadHead(n model.Numbers, list []engine.LoadPeak, heads ...string) []string {
	if p := engine.PeakOf(list); p != nil {
		heads = slices.Insert(heads, len(heads)-1, upperFirst(p.Short())+", "+p.Unit(n.Style))
	}
	return heads
}

// loadCell is what stands under it.
func loadCell(n model.Numbers, first, list []engine.LoadPeak) app.UI {
	if engine.PeakOf(first) == nil {
		return nothing()
	}
	text := ""
	p := engine.PeakOf(list)
	if p != nil {
		text = p.Number(n.Style)
	}
	return app.Td().Text(text)
}

// keepButton makes a row's car a candidate.
func keepButton(keep func(app.Context), scope ...any) app.UI {
	return button("Keep", func(ctx app.Context, _ app.Event) { keep(ctx) }, scope...).Class("small").Aria("label", "Keep as a candidate")
}

// pick is the combination that is pointed at.
func (s *shelf) pick() app.UI {
	list, n, r := s.State.choices(), s.Bench.numbers(), s.State.result
	c := list[min(s.State.picked, len(list)-1)]
	return app.Div().Class("outcome").Body(
		app.Strong().Class("figure").Text(n.ToeNumber(degrees(of(c, r.Figure)))),
		app.P().Class("note").Body(
			app.Text(model.ChoiceName(c)),
			app.Span().Text(fmt.Sprintf("%s toe change, %s; price %.2f", figureName(r.Figure), n.ToeUnit(), c.Price)),
		),
		button("Make it a candidate", func(ctx app.Context, _ app.Event) { s.take(ctx, c) }, model.ChoiceName(c), s.State.picked).ID("take-choice").Class("primary"),
	)
}
