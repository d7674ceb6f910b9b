package ui

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// setUps is a table of the series in each set-up that the search must serve, and the
// share of all cars that pass; nothing where there are none.
func (f *forge) setUps(r *engine.ToleranceResult) app.UI {
	list := r.Scenarios
	return only(len(list) > 0, func() app.UI {
		return app.Table().Class("figures").ID("series-set-ups").Body(
			app.Caption().Text("In each set-up; "+figureWords[r.Figure.Name]+" "+model.In(f.Bench.numbers().ToeUnit())),
			app.THead().Body(app.Tr().Body(
				app.Th().Scope("col").Text("Set-up"),
				app.Th().Scope("col").Text("95 % within"),
				app.Th().Scope("col").Text("Cars that pass"),
			)),
			app.TBody().Body(
				app.Range(list).Slice(func(i int) app.UI { return f.setUp(&list[i]) }),
				app.Tr().Body(app.Th().Scope("row").Text("by their weights"), app.Td(), app.Td().Text(passing(r.ScenarioYield))),
			),
		)
	})
}

// setUp is the row of one set-up: its numbers, or why there are none.
func (f *forge) setUp(s *engine.ToleranceScenario) app.UI {
	name := s.Name
	if s.Binds {
		name += " (decides)"
	}
	if s.Failed > 0 {
		name += fmt.Sprintf(", %d cars fail", s.Failed)
	}
	if s.Problem != "" {
		return app.Tr().Body(app.Th().Scope("row").Class("named").Text(name), app.Td().ColSpan(2).Class("problem").Text(study.Spoken(s.Problem)))
	}
	return app.Tr().Body(
		app.Th().Scope("row").Class("named").Text(name),
		app.Td().Text(f.toeText(s.Percentile95)),
		app.Td().Text(passing(s.Yield)),
	)
}

// passing writes a share of the cars; nothing where no limit was stated.
func passing(share engine.Number) string {
	if !share.Valid() {
		return ""
	}
	return fmt.Sprintf("%.1f %%", 100*float64(share))
}
