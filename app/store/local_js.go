package store

import (
	"fmt"
	"syscall/js"
)

// Area is one of the browser's storages, by the name that it has there. Where the browser
// denies it every call returns an [ErrDenied].
type Area string

// The storages of a browser.
const (
	Local Area = "localStorage"   // of all tabs
	Tab   Area = "sessionStorage" // of one tab, through its reloads
)

// Get implements [Storage].
func (a Area) Get(key string) (text string, ok bool, err error) {
	err = guard(func() {
		if v := a.object().Call("getItem", key); v.Type() == js.TypeString {
			text, ok = v.String(), true
		}
	})
	return text, ok, err
}

// Set implements [Storage].
func (a Area) Set(key, text string) error {
	return guard(func() { a.object().Call("setItem", key, text) })
}

// Remove implements [Storage].
func (a Area) Remove(key string) error {
	return guard(func() { a.object().Call("removeItem", key) })
}

// Keys implements [Storage].
func (a Area) Keys() (keys []string, err error) {
	err = guard(func() {
		list := js.Global().Get("Object").Call("keys", a.object())
		for i := range list.Length() {
			keys = append(keys, list.Index(i).String())
		}
	})
	return keys, err
}

// object returns the browser's object. Where the browser denies it already the look
// at it throws, which ends the program unless it is a call that does.
func (a Area) object() js.Value {
	return js.Global().Get("Reflect").Call("get", js.Global(), string(a))
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
