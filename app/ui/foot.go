package ui

import (
	"context"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// message is the last thing that was said by a panel.
type message struct {
	text   string
	undo   func(app.Context) // undoes what was said; nil where it cannot be
	number int
	fresh  bool // it was said a moment ago
}

// freshTime is how long a phone shows what was said, in place of the head.
const freshTime = 6 * time.Second

// say tells the user something, perhaps with a way to undo it.
func (p *Panels) say(_ app.Context, text string, undo func(app.Context)) {
	p.message = message{text, undo, p.message.number + 1, true}
	p.Desk.Said = text
	number := p.message.number
	p.after(freshTime, func(app.Context) {
		if p.message.number == number {
			p.message.fresh = false
		}
	})
}

// foot is the bottom line: what was said last, with a way back, and the caution. The
// message is always there, so that what appears in it is read aloud.
func (p *Panels) foot() app.UI {
	class := "bottom-line"
	if p.message.fresh {
		class += " fresh"
	}
	return app.Footer().Class(class).Body(
		only(p.stands, func() app.UI {
			return app.Span().ID("kept").Class("kept").Aria("live", "polite").Text(p.Kept.state(p))
		}),
		app.P().ID("message").Class("message").Role("status").Body(withCaution(p.Desk.Said)...),
		p.undoSaid(),
		app.P().Class("bottom-caution").Text(shortCaution),
		only(p.stands, func() app.UI { return p.solver() }),
	)
}

// undoSaid is the way back from what was said, where there is one.
func (p *Panels) undoSaid() app.UI {
	undo, number := p.message.undo, p.message.number
	return only(undo != nil && p.message.text == p.Desk.Said, func() app.UI {
		return button("Undo", func(ctx app.Context, _ app.Event) { undo(ctx) }, number).ID("message-undo").Class("link")
	})
}

// solver says whether the solver's workers run. It is seen while they do not.
func (p *Panels) solver() app.UI {
	class := "solver"
	if p.workers == workersReady {
		class = "unseen"
	}
	return app.P().Class(class).Body(app.Text("Solver "), app.Span().ID("solver").Aria("live", "polite").Text(p.workers))
}

// workersReady is the state of workers that answer.
const workersReady = "ready"

// wake asks a worker whether it is up.
func (p *Panels) wake(ctx app.Context) {
	p.workers = "starting"
	ctx.Async(func() {
		_, err := p.Caller.Call(context.Background(), "ping", nil, nil, nil)
		ctx.Dispatch(func(app.Context) { p.workers = workersState(err) })
	})
}

// workersState says in words how the workers are.
func workersState(err error) string {
	if err != nil {
		return "not running: " + err.Error()
	}
	return workersReady
}
