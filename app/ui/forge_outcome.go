package ui

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// outcome shows what came of the series.
func (f *forge) outcome() app.UI {
	r := f.State.result
	if r == nil {
		return nothing()
	}
	return app.Section().Class("block answer").ID("series").Aria("label", "What came of the series").Body(
		app.P().Class("verdict").Text(yieldText(r)),
		only(f.State.of != f.Bench.document(), func() app.UI {
			return app.P().Class("warning").Text("The study has changed since: build the series again.")
		}),
		f.spread(r),
		f.setUps(r),
		f.contributors(r),
		only(len(r.Loads) > 0, func() app.UI { return f.loads(r.Loads) }),
		app.P().Class("note").Text(method(r)),
	)
}

// spread is a table of the peak of the series.
func (f *forge) spread(r *engine.ToleranceResult) app.UI {
	n := f.Bench.numbers()
	row := func(label string, x engine.Number) app.UI {
		return app.Tr().Body(app.Th().Scope("row").Text(label), app.Td().Text(f.toeText(x)))
	}
	return app.Table().Class("figures").Body(
		app.Caption().Text(figureWords[r.Figure.Name]+" toe change less target, "+n.ToeUnit()),
		app.TBody().Body(
			row("as drawn", r.Figure.Nominal),
			row("half of the cars within", r.Figure.Median),
			row("95 % within", r.Figure.Percentile95),
			row("99 % within", r.Figure.Percentile99),
		),
		only(r.Figure.Problem != "", func() app.UI {
			return app.TFoot().Body(app.Tr().Body(app.Td().ColSpan(2).Class("warning").Text(study.Spoken(r.Figure.Problem) + ".")))
		}),
	)
}

// toeText writes an angle of toe as the study shows it, none where there is none.
func (f *forge) toeText(x engine.Number) string {
	if !x.Valid() {
		return "none"
	}
	return f.Bench.numbers().ToeNumber(degrees(x))
}

// figureWords name the figure of a series at the head of a table.
var figureWords = map[string]string{"peak": "Peak", "rms": "RMS"}

const aboutShare = "A dimension's part of the variance of the toe, at the travel where the spread is widest. The first is the one to hold tighter."

// contributors shows which dimensions decide, and what holding each tighter would
// bring.
func (f *forge) contributors(r *engine.ToleranceResult) app.UI {
	list := r.Contributors
	return app.Table().Class("figures contributors").Body(
		app.Caption().Text("What decides"),
		app.THead().Body(app.Tr().Body(
			app.Th().Scope("col").Text("Dimension"),
			app.Th().Scope("col").Body(explain("Share", aboutShare)),
			app.Th().Scope("col").Text("Held twice as tightly"),
		)),
		app.TBody().Body(app.Range(list).Slice(func(i int) app.UI { return f.contributor(&list[i]) })),
	)
}

func (f *forge) contributor(c *engine.Contributor) app.UI {
	label := c.Parameter
	if p, sides, err := solver.FindParameter(f.Bench.cars().Design, c.Parameter); err == nil {
		label = p.Label + sideWord(sides)
	}
	return app.Tr().Body(
		app.Th().Scope("row").Text(label),
		app.Td().Body(
			app.Elem("meter").Attr("max", "1").Attr("value", fmt.Sprintf("%.3f", float64(c.Share))).Aria("hidden", "true"),
			app.Text(fmt.Sprintf("%.0f %%", 100*float64(c.Share))),
		),
		app.Td().Text(gain(c.Halved)),
	)
}

// loads shows the largest loads and how they spread.
func (f *forge) loads(list []engine.LoadPeak) app.UI {
	n := f.Bench.numbers()
	return app.Table().Class("figures contributors").Body(
		app.Caption().Text("Largest loads, and what the tolerances leave in them"),
		app.THead().Body(app.Tr().Body(heads("Load", "As drawn", "Standard deviation")...)),
		app.TBody().Body(app.Range(list).Slice(func(i int) app.UI {
			p := &list[i]
			return app.Tr().Body(
				app.Th().Scope("row").Body(app.Text(p.Label()), app.Span().Class("unit").Text(" "+p.Unit(n.Style))),
				app.Td().Body(app.Text(p.Number(n.Style)), under(p.Where())),
				app.Td().Text(p.Spread(n.Style)),
			)
		})),
	)
}

// gain says by how many points of a hundred the yield rises.
func gain(x engine.Number) string {
	if !x.Valid() {
		return ""
	}
	percent := 100 * float64(x)
	return number.Signed(percent, number.Decimal(percent, 1)) + " % of the cars"
}

// sideWord returns ", left" or ", right" for a parameter of one side.
func sideWord(s solver.Selection) string {
	if suffix := s.Suffix(); suffix != "" {
		return ", " + suffix[1:]
	}
	return ""
}

// method says how the numbers were come by.
func method(r *engine.ToleranceResult) string {
	text := fmt.Sprintf("By simulation of %s (JCGM 101); static toe %s.", number.Count(r.Cars, "car"), r.StaticToe)
	if r.Failed > 0 {
		text += fmt.Sprintf(" %s, which could not be built or did not reach the window, counted as failed.", number.Count(r.Failed, "car"))
	}
	if r.LinearValid {
		return text + " Exact sensitivities alone (JCGM 100) give the same within a twentieth of the spread."
	}
	return text + " Sensitivities alone (JCGM 100) would not do: the spread is too wide for them."
}
