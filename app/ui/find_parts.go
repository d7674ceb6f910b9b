package ui

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
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
	Asked *question
}

// shelving is a ranking that runs, or what came of it.
type shelving struct {
	errand[engine.ChooseResult]
	picked int // number of the combination that is pointed at
}

// Render shows the question, the ranking and the parts.
func (s *shelf) Render() app.UI {
	if s.Bench.cars().Err != nil {
		return s.Bench.cannotFind()
	}
	return app.Div().Class("way").Body(
		s.Bench.fitUse(),
		s.Asked,
		only(s.State.result != nil, func() app.UI { return s.outcome() }),
		s.parts(),
		app.Div().Class("result").Body(
			only(s.State.result != nil && len(s.State.choices()) > 0, func() app.UI { return s.pick() }),
			s.run(),
		),
	)
}

// parts lists the catalogue.
func (s *shelf) parts() app.UI {
	list := s.Bench.document().Catalogue
	return app.Details().Class("block").ID("parts-list").Open(s.State.result == nil).Body(
		app.Summary().Text(fmt.Sprintf("Parts that can be bought (%d)", len(list))),
		app.P().Class("note").Text("By slots: of each slot one part is fitted, or none. Every combination is tried."),
		s.Bench.borrowedList("catalogue"),
		only(len(list) == 0, func() app.UI { return app.P().Text("Nothing yet: add a part, or take a table.") }),
		many(app.Range(list).Slice(func(i int) app.UI { return &part{Bench: s.Bench, Index: i, Part: list[i]} })),
		app.Div().Class("deeds").Body(button("Add a part", s.add, len(list)).ID("add-part")),
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

// run shows the button that ranks: the one to press until there are combinations to take.
func (s *shelf) run() app.UI {
	start := button("Try every combination", s.start).ID("choose").Disabled(len(s.Bench.document().Catalogue) == 0)
	if s.State.result == nil {
		start = start.Class("primary")
	}
	return s.State.run("shelf", start)
}

func (s *shelf) start(app.Context, app.Event) {
	s.State.picked = 0
	s.Asked.State.check.rest()
	s.State.start(s.Bench, calls.Choose, s.Bench.document(), nil, func(ctx app.Context, r *engine.ChooseResult) {
		s.Bench.Say(ctx, fmt.Sprintf("%s tried; of %d the parts go together.", number.Count(r.Tried, "combination"), r.Built), nil)
	})
}

// take makes a choice a candidate.
func (s *shelf) take(ctx app.Context, c *engine.Choice) {
	s.Bench.undoable(ctx, "New candidate: "+model.ChoiceName(c)+".", func() error { return s.Bench.Desk.Choose(c) })
}
