package ui

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/worker"
	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
)

// shelf ranks the combinations of parts that can be bought.
type shelf struct {
	app.Compo
	Bench bench
	State *shelving
}

// shelving is a ranking that runs, or what came of it.
type shelving = errand[engine.ChooseResult]

// Render shows the parts and the ranking.
func (s *shelf) Render() app.UI {
	if s.Bench.cars().Err != nil {
		return app.P().Text("The base car cannot be solved: mend its points in Car first.")
	}
	return app.Div().Class("shelf").Body(
		app.P().Class("note").Text("Parts that can be bought, by slots: of each slot one part is fitted, or none. Every combination is tried; those that nothing betters in both price and toe change stand on the picture."),
		s.Bench.fitUse(),
		s.run(),
		s.outcome(),
		s.parts(),
	)
}

// parts lists the catalogue.
func (s *shelf) parts() app.UI {
	list := s.Bench.document().Catalogue
	return app.Section().Class("block").Body(
		app.H2().Text("On the shelf"),
		s.Bench.borrowedList("catalogue"),
		app.If(len(list) == 0, func() app.UI { return app.P().Text("Nothing yet: add a part, or take a table.") }),
		app.Range(list).Slice(func(i int) app.UI { return &part{Bench: s.Bench, Index: i, Part: list[i]} }),
		button("Add a part", s.add, len(list)).ID("add-part"),
		partsTable(s.Bench),
	)
}

// add adds a part that is yet to be described.
func (s *shelf) add(ctx app.Context, _ app.Event) {
	s.Bench.edit(ctx, func() error {
		n := len(s.Bench.document().Catalogue) + 1
		return s.Bench.session().AddPart(study.Part{Slot: "spacers", Name: fmt.Sprintf("part %d", n), Changes: study.Changes{}})
	})
}

// run shows the button that ranks.
func (s *shelf) run() app.UI {
	start := button("Try every combination", s.start).ID("choose").Class("primary")
	return s.State.run("shelf", start.Disabled(len(s.Bench.document().Catalogue) == 0))
}

func (s *shelf) start(app.Context, app.Event) {
	params := worker.Params[engine.ChooseOptions]{Study: s.Bench.document()}
	s.State.start(s.Bench, calls.Choose, params, func(ctx app.Context, r *engine.ChooseResult) {
		s.Bench.Say(ctx, fmt.Sprintf("%s tried; of %d the parts go together.", number.Count(r.Tried, "combination"), r.Built), nil)
	})
}

// take makes a choice a candidate.
func (s *shelf) take(ctx app.Context, c *engine.Choice) {
	s.Bench.undoable(ctx, "New candidate: "+model.ChoiceName(c)+".", func() error { return s.Bench.Desk.Choose(c) })
}
