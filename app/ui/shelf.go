package ui

import (
	"encoding/json"
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

// shelving is a ranking that runs, or what came of it. It outlives the panel.
type shelving struct {
	job    job
	result *engine.ChooseResult
	of     *study.Document // the study that the result is of
	fault  string
}

// Render shows the parts and the ranking.
func (s *shelf) Render() app.UI {
	if s.Bench.cars().Err != nil {
		return app.P().Text("The base car cannot be solved: mend its points in My car first.")
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
	return app.Section().Class("run").Body(
		app.If(s.State.job.running(), func() app.UI { return s.State.job.render("shelf", "") }).
			Else(func() app.UI {
				return button("Try every combination", s.start).ID("choose").Class("primary").Disabled(len(s.Bench.document().Catalogue) == 0)
			}),
		app.If(s.State.fault != "", func() app.UI { return app.P().Class("problem").Role("alert").Text(s.State.fault) }),
	)
}

func (s *shelf) start(app.Context, app.Event) {
	s.State.result, s.State.fault = nil, ""
	doc := s.Bench.document()
	s.State.job.start(s.Bench.Lasting, s.Bench.Caller, calls.Choose, worker.Params[engine.ChooseOptions]{Study: doc},
		func(ctx app.Context, raw json.RawMessage, err error) {
			r := new(engine.ChooseResult)
			if err == nil {
				err = json.Unmarshal(raw, r)
			}
			if err != nil {
				s.State.fault = plain(err)
				return
			}
			s.State.result, s.State.of = r, doc
			s.Bench.Say(ctx, fmt.Sprintf("%s tried; of %d the parts go together.", number.Count(r.Tried, "combination"), r.Built), nil)
		})
}

// take makes a choice a candidate.
func (s *shelf) take(ctx app.Context, c *engine.Choice) {
	s.Bench.undoable(ctx, "New candidate: "+model.ChoiceName(c)+".", func() error { return s.Bench.Desk.Choose(c) })
}
