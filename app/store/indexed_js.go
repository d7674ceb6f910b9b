package store

import (
	"fmt"
	"syscall/js"
)

// Indexed is a [Copy] in the browser's IndexedDB, by the functions of boot/copy.js.
type Indexed struct{}

// Read implements [Copy].
func (Indexed) Read(done func(map[string]string, error)) {
	await(js.Global().Get("toewright").Call("readCopy"), func(found js.Value, err error) {
		if err != nil {
			done(nil, err)
			return
		}
		keys, texts := found.Get("keys"), found.Get("texts")
		copied := map[string]string{}
		for i := range keys.Length() {
			if text := texts.Index(i); text.Type() == js.TypeString {
				copied[keys.Index(i).String()] = text.String()
			}
		}
		done(copied, nil)
	})
}

// Write implements [Copy].
func (Indexed) Write(changes []Change, done func(error)) {
	list := make([]any, len(changes))
	for i, c := range changes {
		list[i] = []any{c.Key, c.Text}
		if c.Gone {
			list[i] = []any{c.Key, nil}
		}
	}
	await(js.Global().Get("toewright").Call("writeCopy", list), func(_ js.Value, err error) { done(err) })
}

// await calls done once with what a promise comes to.
func await(promise js.Value, done func(js.Value, error)) {
	var fulfilled, rejected js.Func
	end := func(value js.Value, err error) {
		fulfilled.Release()
		rejected.Release()
		done(value, err)
	}
	fulfilled = js.FuncOf(func(_ js.Value, args []js.Value) any {
		end(args[0], nil)
		return nil
	})
	rejected = js.FuncOf(func(_ js.Value, args []js.Value) any {
		end(js.Undefined(), fmt.Errorf("store: %s", args[0].Call("toString").String()))
		return nil
	})
	promise.Call("then", fulfilled, rejected)
}
