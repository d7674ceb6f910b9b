package wasm

import (
	"encoding/json"
	"syscall/js"
)

var (
	jsObject     = js.Global().Get("Object")
	jsArray      = js.Global().Get("Array")
	jsUint8Array = js.Global().Get("Uint8Array")
)

// encode returns a message as a JavaScript object, and the list of the buffers
// to hand over with it.
func encode(m message) (object, transfer js.Value) {
	object, transfer = jsObject.New(), jsArray.New()
	object.Set("id", m.ID)
	object.Set("kind", string(m.Kind))
	setText(object, "method", m.Method)
	setText(object, "code", string(m.Code))
	setText(object, "text", m.Text)
	if m.Body != nil {
		body := jsUint8Array.New(len(m.Body))
		js.CopyBytesToJS(body, m.Body)
		object.Set("body", body)
		transfer.Call("push", body.Get("buffer"))
	}
	return object, transfer
}

func setText(object js.Value, key, text string) {
	if text != "" {
		object.Set(key, text)
	}
}

// decode returns the message that a JavaScript object stands for. What is absent
// or of another type counts as empty.
func decode(object js.Value) message {
	m := message{
		Kind:   kind(textOf(object, "kind")),
		Method: textOf(object, "method"),
		Code:   Code(textOf(object, "code")),
		Text:   textOf(object, "text"),
		Body:   bodyOf(object.Get("body")),
	}
	if id := object.Get("id"); id.Type() == js.TypeNumber {
		m.ID = id.Int()
	}
	return m
}

func textOf(object js.Value, key string) string {
	if v := object.Get(key); v.Type() == js.TypeString {
		return v.String()
	}
	return ""
}

func bodyOf(v js.Value) json.RawMessage {
	switch {
	case v.Type() == js.TypeString:
		return json.RawMessage(v.String())
	case v.InstanceOf(jsUint8Array):
		body := make(json.RawMessage, v.Length())
		js.CopyBytesToGo(body, v)
		return body
	}
	return nil
}
