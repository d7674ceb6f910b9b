package main

import (
	"toewright/app/worker"
	"toewright/wasm"
)

// handlers returns the methods of a worker, beside the bridge's own ping.
func handlers() map[string]wasm.Handler { return worker.Handlers() }
