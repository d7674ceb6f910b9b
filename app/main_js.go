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

// mostWorkers is how many there are at most: past it the memory costs more than the time they
// save.
const mostWorkers = 8

// poolSize returns the number of workers: one thread is left to the page, and where memory is
// short, which some browsers say in GiB, there are two for each GiB.
func poolSize() int {
	navigator := js.Global().Get("navigator")
	threads, memory := navigator.Get("hardwareConcurrency"), navigator.Get("deviceMemory")
	if threads.Type() != js.TypeNumber {
		return 1
	}
	n := min(threads.Int()-1, mostWorkers)
	if memory.Type() == js.TypeNumber {
		n = min(n, int(2*memory.Float()))
	}
	return max(n, 1)
}
