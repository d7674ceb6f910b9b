package ui

import (
	"io"
	"syscall/js"

	"toewright/app/store"
)

// browserStorage returns what the browser keeps for the page.
func browserStorage() store.Storage { return store.Local }

// browserTab returns what the browser keeps for this tab alone.
func browserTab() store.Storage { return store.Tab }

// browserCopy returns the copy on disk of what the browser keeps.
func browserCopy() store.Copy { return store.Indexed{} }

// browserRandom returns the browser's own source of random bytes. Package crypto/rand
// would read the same, at the price of its other generators' code.
func browserRandom() io.Reader { return random{} }

// sayStanding tells the script boot.js that the page stands.
func sayStanding() { js.Global().Get("toewright").Call("stand") }

// afterFrame does something once the screen shows what is on the page now.
func afterFrame(do func()) {
	var frame, task js.Func
	task = js.FuncOf(func(js.Value, []js.Value) any {
		frame.Release()
		task.Release()
		do()
		return nil
	})
	frame = js.FuncOf(func(js.Value, []js.Value) any {
		js.Global().Call("setTimeout", task)
		return nil
	})
	js.Global().Call("requestAnimationFrame", frame)
}

type random struct{}

// Read fills b. The browser gives at most 65,536 bytes at once.
func (random) Read(b []byte) (int, error) {
	array := js.Global().Get("Uint8Array").New(len(b))
	js.Global().Get("crypto").Call("getRandomValues", array)
	return js.CopyBytesToGo(b, array), nil
}
