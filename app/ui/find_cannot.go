package ui

import (
	"encoding/json"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/solver"
)

// feasibility is whether what a search is asked for can be had at all. A worker looks into
// it while nobody edits, and lets go of it as soon as somebody does.
type feasibility struct {
	job    job
	of     asked
	result *engine.FeasibleResult // nil while it is not known
}

// asked is what the answer depends on: the same pointers are the same question.
type asked struct {
	search *study.Search
	design *solver.Design
}

// settled is how long nobody has edited before a worker looks into what is not asked by a
// press: whether a question can be answered at all, or a series of cars.
const settled = 700 * time.Millisecond

// look sees to it that the question as it stands is looked into, once it has settled.
func (c *feasibility) look(b bench, after func(time.Duration, func(app.Context))) {
	of := asked{b.document().Search, b.cars().Design}
	if of == c.of || b.cars().Err != nil {
		return
	}
	c.job.drop()
	c.of, c.result = of, nil
	after(settled, func(app.Context) {
		if c.of == of && c.result == nil && !c.job.running() {
			c.start(b)
		}
	})
}

// start asks a worker. A question that is not whole yet is not asked: the button says why.
func (c *feasibility) start(b bench) {
	doc, of := model.WithSearch(b.document(), b.cars().Design), c.of
	if doc.ReadyToSearch() != nil {
		return
	}
	c.job.start(b.Lasting, b.Caller, calls.Feasible, doc, nil, func(_ app.Context, raw json.RawMessage, err error) {
		if r, err := answerOf[engine.FeasibleResult](raw, err); err == nil && c.of == of {
			c.result = r
		}
	})
}

// rest lets go of a look that runs: a search tells as much by itself.
func (c *feasibility) rest() {
	if c.job.running() {
		c.job.drop()
	}
}

// render says what cannot be had, each with the nearest that can; where there is no answer
// yet that all can, too, and that it is being looked into.
func (c *feasibility) render(b bench, unanswered bool) app.UI {
	var list []model.Cannot
	if c.result != nil {
		list = model.CannotOf(model.WithSearch(b.document(), b.cars().Design), b.cars(), c.result)
	}
	return app.Div().ID("cannot").Class("cannot").Role("status").Body(
		only(unanswered && c.job.running(), func() app.UI { return app.P().Class("note").Text("Looking whether all of it can be had.") }),
		many(app.Range(list).Slice(func(i int) app.UI {
			k := &list[i]
			return app.Div().Body(
				app.P().Class("warning").Text("✗ "+k.Text),
				only(k.Nearest != nil, func() app.UI {
					return button("Take the nearest", func(ctx app.Context, _ app.Event) {
						b.undoable(ctx, "The nearest that can be had is a candidate.", func() error { return b.Desk.TakeNearest(k) })
					}, i, k.Text).ID("nearest-" + string(rune('0'+i)))
				}),
			)
		})),
		only(unanswered && c.result != nil && len(list) == 0 && hasLimits(b.document()), func() app.UI {
			return app.P().Class("note").Text("✓ All limits can be held together within the bounds.")
		}),
	)
}

func hasLimits(d *study.Document) bool { return d.Search != nil && len(d.Search.Limits) > 0 }
