package wasm

import (
	"context"
	"encoding/json"
	"maps"
)

// MethodPing is the method that answers with its own body. It tells whether a
// worker is up.
const MethodPing = "ping"

func ping(_ context.Context, params json.RawMessage, _ func(any)) (any, error) {
	return params, nil
}

// withPing returns the handlers and ping.
func withPing(handlers map[string]Handler) map[string]Handler {
	all := maps.Clone(handlers)
	if all == nil {
		all = map[string]Handler{}
	}
	all[MethodPing] = ping
	return all
}
