package ui

import (
	"context"
	"encoding/json"
	"maps"
	"slices"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// Caller runs a method where it cannot block the page. It is implemented by the
// pool of workers; see [toewright/wasm.Pool.Call].
type Caller interface {
	Call(ctx context.Context, method string, params any, progress func(json.RawMessage)) (json.RawMessage, error)
	// Size is into how many calls bulk work is worth dividing.
	Size() int
}

// pages maps each path to what stands there.
var pages = map[string]func(Caller) app.Composer{
	"/": func(c Caller) app.Composer { return newPage(c) },
}

// Routes enters the pages in go-app's table. The caller is nil on the server,
// which only renders.
func Routes(caller Caller) {
	for path, page := range pages {
		app.Route(path, func() app.Composer { return page(caller) })
	}
}

// RouteAnywhere enters the page for every path: in the browser the document's host
// has decided already what stands where, and under which path that is.
func RouteAnywhere(caller Caller) {
	app.RouteWithRegexp("", func() app.Composer { return newPage(caller) })
}

// Paths returns the paths that have a page, sorted.
func Paths() []string { return slices.Sorted(maps.Keys(pages)) }
