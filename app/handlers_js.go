package main

import "toewright/wasm"

// handlers returns the methods of a worker, beside the bridge's own ping.
func handlers() map[string]wasm.Handler {
	return map[string]wasm.Handler{}
}
