package ui

import (
	"context"
	"encoding/json"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// Caller makes calls where they cannot block the page, those that can be divided by several
// workers together. It is implemented by [toewright/app/worker.Team].
type Caller interface {
	Call(ctx context.Context, method string, d *study.Document, options any, progress func(engine.Progress)) (json.RawMessage, error)
	// Size is how many calls are made at once.
	Size() int
}

// RouteAnywhere enters the page for every path: in the browser the document's host
// has decided already what stands where, and under which path that is.
func RouteAnywhere(caller Caller) {
	app.RouteWithRegexp("", func() app.Composer { return New(caller) })
}
