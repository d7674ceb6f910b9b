package wasm

import "syscall/js"

// eventLoop lets JavaScript's event loop turn.
type eventLoop struct {
	post func() // asks for a turn, which ends in a value on turn
	turn chan struct{}
}

// newEventLoop returns one that turns by a message to itself, as a timer would cost
// 4 ms each time. Node has setImmediate instead: there a port that answers itself
// keeps all others waiting for a thousand messages.
func newEventLoop() *eventLoop {
	l := &eventLoop{turn: make(chan struct{})}
	onTurn := js.FuncOf(func(js.Value, []js.Value) any {
		l.turn <- struct{}{}
		return nil
	})
	if immediate := js.Global().Get("setImmediate"); immediate.Truthy() {
		l.post = func() { immediate.Invoke(onTurn) }
		return l
	}
	channel := js.Global().Get("MessageChannel").New()
	channel.Get("port2").Set("onmessage", onTurn)
	l.post = func() { channel.Get("port1").Call("postMessage", nil) }
	return l
}

// yield returns after the events that wait have been seen.
func (l *eventLoop) yield() {
	l.post()
	<-l.turn
}
