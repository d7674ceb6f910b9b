package wasm

import "encoding/json"

// kind says what a message is for; see the package comment.
type kind string

const (
	kindCall     kind = "call"
	kindCancel   kind = "cancel"
	kindProgress kind = "progress"
	kindResult   kind = "result"
	kindError    kind = "error"
)

// message is one message of the protocol. Fields that its kind does not have
// are empty.
type message struct {
	ID     int
	Kind   kind
	Method string
	Body   json.RawMessage
	Code   Code
	Text   string
}

// port is one end of the wire. Post must not block, and is safe for concurrent
// use.
type port interface {
	post(message)
}
