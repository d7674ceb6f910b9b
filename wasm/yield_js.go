package wasm

import "syscall/js"

// eventLoop lets JavaScript's event loop turn, by a message to itself: a timer
// would cost 4 ms each time.
type eventLoop struct {
	port js.Value
	turn chan struct{}
}

func newEventLoop() *eventLoop {
	channel := js.Global().Get("MessageChannel").New()
	l := &eventLoop{port: channel.Get("port1"), turn: make(chan struct{})}
	channel.Get("port2").Set("onmessage", js.FuncOf(func(js.Value, []js.Value) any {
		l.turn <- struct{}{}
		return nil
	}))
	return l
}

// yield returns after the events that wait have been seen.
func (l *eventLoop) yield() {
	l.port.Call("postMessage", nil)
	<-l.turn
}
