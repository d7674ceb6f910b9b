package ui

import (
	"context"
	"encoding/json"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// Caller runs a method where it cannot block the page. It is implemented by the
// pool of workers; see [toewright/wasm.Pool.Call].
type Caller interface {
	Call(ctx context.Context, method string, params any, progress func(json.RawMessage)) (json.RawMessage, error)
	// Size is into how many calls bulk work is worth dividing.
	Size() int
}

// RouteAnywhere enters the page for every path: in the browser the document's host
// has decided already what stands where, and under which path that is.
func RouteAnywhere(caller Caller) {
	app.RouteWithRegexp("", func() app.Composer { return New(caller) })
}
