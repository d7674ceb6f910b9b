package wasm

import (
	"fmt"
	"syscall/js"
)

// NewPool returns a pool of at most size workers of the browser. It starts none
// before the first call.
func NewPool(size int) *Pool { return newPool(size, spawnWorker) }

// jsLink is a worker of the browser.
type jsLink struct {
	jsPort
	worker js.Value
	funcs  []js.Func
}

// spawnWorker starts a worker by the script boot.js. Panics of syscall/js, such as
// a page without that script, come back as errors.
func spawnWorker(receive func(message), failed func(error)) (l link, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("%v", r)
		}
	}()
	channel := js.Global().Get("MessageChannel").New()
	worker := js.Global().Get("toewright").Call("startWorker", channel.Get("port2"))
	w := &jsLink{jsPort: jsPort{channel.Get("port1")}, worker: worker}
	w.funcs = append(w.funcs, w.listen(receive))
	w.onExit(failed)
	return w, nil
}

// onExit calls failed when the worker's program ends or its script throws.
func (w *jsLink) onExit(failed func(error)) {
	exit := js.FuncOf(func(_ js.Value, args []js.Value) any {
		failed(fmt.Errorf("%w: %s", ErrWorkerEnded, exitText(args[0])))
		w.end()
		return nil
	})
	w.funcs = append(w.funcs, exit)
	w.worker.Set("onmessage", exit)
	w.worker.Set("onerror", exit)
}

// exitText returns the reason that an exit message or an error event gives.
func exitText(event js.Value) string {
	if data := event.Get("data"); data.Type() == js.TypeObject {
		return textOf(data, "text")
	}
	return textOf(event, "message")
}

func (w *jsLink) end() {
	w.worker.Call("terminate")
	w.value.Call("close")
	for _, f := range w.funcs {
		f.Release()
	}
	w.funcs = nil
}
