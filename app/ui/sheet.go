package ui

import (
	"context"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// Sheet is the page: a drawing sheet with its title block.
type Sheet struct {
	app.Compo

	caller Caller
	solver string // state of the workers, in words
}

// OnMount asks a worker whether it is up.
func (s *Sheet) OnMount(ctx app.Context) {
	s.solver = "starting"
	ctx.Async(func() {
		_, err := s.caller.Call(context.Background(), "ping", nil, nil)
		ctx.Dispatch(func(app.Context) { s.solver = solverState(err) })
	})
}

func solverState(err error) string {
	if err != nil {
		return "not running: " + err.Error()
	}
	return "ready"
}

// Render draws the sheet.
func (s *Sheet) Render() app.UI {
	return app.Main().ID("sheet").Class("sheet").Body(
		app.Header().Class("title-block").Body(
			app.H1().Text("Toewright"),
			app.P().Text("Toe through wheel travel, and the steering arm that holds it."),
			app.Dl().Body(
				app.Dt().Text("Drawing"),
				app.Dd().Text("none yet"),
				app.Dt().Text("Solver"),
				app.Dd().ID("solver").Aria("live", "polite").Text(s.solver),
			),
		),
	)
}
