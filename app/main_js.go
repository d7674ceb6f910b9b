package main

import (
	"syscall/js"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/ui"
	"toewright/wasm"
)

func main() {
	if wasm.InWorker() {
		wasm.Serve(handlers())
		return
	}
	ui.RouteAnywhere(wasm.NewPool(poolSize()))
	app.RunWhenOnBrowser()
}

// poolSize returns the number of workers: one thread is left to the page, and
// past eight the memory costs more than the time they save.
func poolSize() int {
	threads := js.Global().Get("navigator").Get("hardwareConcurrency")
	if threads.Type() != js.TypeNumber {
		return 1
	}
	return min(max(threads.Int()-1, 1), 8)
}
