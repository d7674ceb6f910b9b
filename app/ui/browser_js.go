package ui

import (
	"io"
	"syscall/js"

	"toewright/app/store"
)

// browserStorage returns what the browser keeps for the page.
func browserStorage() store.Storage { return store.Local{} }

// browserCopy returns the copy on disk of what the browser keeps.
func browserCopy() store.Copy { return store.Indexed{} }

// browserRandom returns the browser's own source of random bytes. Package crypto/rand
// would read the same, at the price of its other generators' code.
func browserRandom() io.Reader { return random{} }

type random struct{}

// Read fills b. The browser gives at most 65,536 bytes at once.
func (random) Read(b []byte) (int, error) {
	array := js.Global().Get("Uint8Array").New(len(b))
	js.Global().Get("crypto").Call("getRandomValues", array)
	return js.CopyBytesToGo(b, array), nil
}
