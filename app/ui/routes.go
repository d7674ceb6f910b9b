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
}

// Routes enters the pages in go-app's table. The caller is nil on the server,
// which only renders.
func Routes(caller Caller) {
	app.Route("/", func() app.Composer { return &Sheet{caller: caller} })
}
