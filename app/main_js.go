package main

import (
	"runtime/debug"
	"syscall/js"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/ui"
	"toewright/app/worker"
	"toewright/wasm"
)

func main() {
	if wasm.InWorker() {
		wasm.Serve(handlers())
		return
	}
	easeStart()
	ui.RouteAnywhere(worker.Team{Pool: wasm.NewPool(poolSize())})
	app.RunWhenOnBrowser()
}

// easeStart leaves garbage lie until the page stands: collecting it would cost the start
// a tenth, most of it for compiling the collector.
func easeStart() {
	const settled = 3 * time.Second
	percent := debug.SetGCPercent(-1)
	time.AfterFunc(settled, func() { debug.SetGCPercent(percent) })
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
