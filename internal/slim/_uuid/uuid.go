// Package uuid has the one function of its namesake that go-app calls.
package uuid

import "syscall/js"

// NewString returns a random identifier, as the browser makes it.
func NewString() string {
	return js.Global().Get("crypto").Call("randomUUID").String()
}
