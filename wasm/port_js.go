package wasm

import "syscall/js"

// jsPort is a MessagePort.
type jsPort struct{ value js.Value }

func (p jsPort) post(m message) {
	object, transfer := encode(m)
	p.value.Call("postMessage", object, transfer)
}

// listen calls receive for each message that arrives, those included that came
// before. The function it returns is to be released when the port is closed.
func (p jsPort) listen(receive func(message)) js.Func {
	onMessage := js.FuncOf(func(_ js.Value, args []js.Value) any {
		if data := args[0].Get("data"); data.Type() == js.TypeObject {
			receive(decode(data))
		}
		return nil
	})
	p.value.Set("onmessage", onMessage)
	return onMessage
}
