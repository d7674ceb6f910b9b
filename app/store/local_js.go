package store

import (
	"fmt"
	"syscall/js"
)

// Local is the browser's localStorage. Where the browser denies it every call returns
// an [ErrDenied].
type Local struct{}

// Get implements [Storage].
func (Local) Get(key string) (text string, ok bool, err error) {
	err = guard(func() {
		if v := localStorage().Call("getItem", key); v.Type() == js.TypeString {
			text, ok = v.String(), true
		}
	})
	return text, ok, err
}

// Set implements [Storage].
func (Local) Set(key, text string) error {
	return guard(func() { localStorage().Call("setItem", key, text) })
}

// Remove implements [Storage].
func (Local) Remove(key string) error {
	return guard(func() { localStorage().Call("removeItem", key) })
}

// Keys implements [Storage].
func (Local) Keys() (keys []string, err error) {
	err = guard(func() {
		list := js.Global().Get("Object").Call("keys", localStorage())
		for i := range list.Length() {
			keys = append(keys, list.Index(i).String())
		}
	})
	return keys, err
}

// localStorage returns the browser's object. Where the browser denies it already the look
// at it throws, which ends the program unless it is a call that does.
func localStorage() js.Value {
	return js.Global().Get("Reflect").Call("get", js.Global(), "localStorage")
}

// guard runs f and returns what JavaScript throws as an error.
func guard(f func()) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = thrown(r)
		}
	}()
	f()
	return nil
}

// thrown tells what was thrown. A browser that denies its storage throws a
// SecurityError, or has none so that the call panics.
func thrown(r any) error {
	e, ok := r.(js.Error)
	if !ok {
		return fmt.Errorf("%w (%v)", ErrDenied, r)
	}
	switch e.Value.Get("name").String() {
	case "QuotaExceededError", "NS_ERROR_DOM_QUOTA_REACHED":
		return ErrFull
	}
	return fmt.Errorf("%w (%v)", ErrDenied, e)
}
