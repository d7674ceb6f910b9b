package ui

import (
	"context"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// Status says whether the solver's workers run.
type Status struct {
	app.Compo

	Caller Caller
	text   string
}

// OnMount asks a worker whether it is up.
func (s *Status) OnMount(ctx app.Context) {
	s.text = "starting"
	ctx.Async(func() {
		_, err := s.Caller.Call(context.Background(), "ping", nil, nil)
		ctx.Dispatch(func(app.Context) { s.text = solverState(err) })
	})
}

// solverState says in words how the workers are.
func solverState(err error) string {
	if err != nil {
		return "not running: " + err.Error()
	}
	return "ready"
}

// Render shows the state.
func (s *Status) Render() app.UI {
	return app.P().Class("status").Body(
		app.Text("Solver "),
		app.Span().ID("solver").Aria("live", "polite").Text(s.text),
	)
}
