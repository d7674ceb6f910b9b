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
// save. Where the browser does not say how much memory there is, it may be a phone's.
const mostWorkers, mostUnsaid = 8, 4

// poolSize returns the number of workers: one thread is left to the page, and there are two at
// most for each GiB of memory.
func poolSize() int {
	navigator := js.Global().Get("navigator")
	threads, memory := navigator.Get("hardwareConcurrency"), navigator.Get("deviceMemory")
	if threads.Type() != js.TypeNumber {
		return 1
	}
	most := mostUnsaid
	if memory.Type() == js.TypeNumber {
		most = min(mostWorkers, int(2*memory.Float()))
	}
	return max(min(threads.Int()-1, most), 1)
}
