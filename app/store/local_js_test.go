package store

import (
	"errors"
	"slices"
	"syscall/js"
	"testing"
)

// fakeStorage is a localStorage for node, which has none: a string for each key, and room
// for so many letters in all. Its keys are its own properties, as in a browser.
const fakeStorage = `(room, error) => Object.defineProperties({}, {
	getItem: { value(key) { return Object.hasOwn(this, key) ? this[key] : null; } },
	setItem: { value(key, text) {
		if (error || Object.entries(this).flat().join("").length + key.length + text.length > room) {
			throw new DOMException("no", error || "QuotaExceededError");
		}
		this[key] = text;
	} },
	removeItem: { value(key) { delete this[key]; } },
})`

// withStorage puts a fake storage in place for a test. What setItem throws is a
// QuotaExceededError past the room, or always an error of the given name.
func withStorage(t *testing.T, room int, fault string) Area {
	t.Helper()
	return withArea(t, Local, room, fault)
}

// withArea puts a fake storage in the place of one of the browser's.
func withArea(t *testing.T, area Area, room int, fault string) Area {
	t.Helper()
	global := js.Global()
	was := global.Get(string(area))
	storage := global.Call("eval", fakeStorage).Invoke(room, fault)
	define := func(v js.Value) {
		global.Get("Object").Call("defineProperty", global, string(area), map[string]any{"value": v, "configurable": true, "writable": true})
	}
	define(storage)
	t.Cleanup(func() { define(was) })
	return area
}

const ample = 1 << 20

func TestLocalKeepsTexts(t *testing.T) {
	s := withStorage(t, ample, "")
	if _, ok, err := s.Get("a"); ok || err != nil {
		t.Errorf("Get of nothing = %t, %v", ok, err)
	}
	for key, text := range map[string]string{"a": "one", "b": "", "ç": "−12,5 mm \u2028 \U0001f527"} {
		if err := s.Set(key, text); err != nil {
			t.Fatal(err)
		}
		if got, ok, err := s.Get(key); got != text || !ok || err != nil {
			t.Errorf("Get(%q) = %q, %t, %v, want %q", key, got, ok, err, text)
		}
	}
	if err := s.Remove("b"); err != nil {
		t.Fatal(err)
	}
	keys, err := s.Keys()
	if slices.Sort(keys); err != nil || !slices.Equal(keys, []string{"a", "ç"}) {
		t.Errorf("Keys = %q, %v, want those two that are left", keys, err)
	}
}

func TestLocalErrors(t *testing.T) {
	for _, tt := range []struct {
		name  string
		room  int
		fault string
		want  error
	}{
		{"full", 8, "", ErrFull},
		{"full, in an older browser's words", ample, "NS_ERROR_DOM_QUOTA_REACHED", ErrFull},
		{"denied", ample, "SecurityError", ErrDenied},
	} {
		s := withStorage(t, tt.room, tt.fault)
		if err := s.Set("key", "some text"); !errors.Is(err, tt.want) {
			t.Errorf("%s: Set = %v, want %v", tt.name, err, tt.want)
		}
		if _, ok, err := s.Get("key"); ok || err != nil {
			t.Errorf("%s: after it Get = %t, %v, want nothing kept", tt.name, ok, err)
		}
	}
}

// TestLocalWithoutStorage is a browser that has none at all.
func TestLocalWithoutStorage(t *testing.T) {
	withStorage(t, ample, "")
	js.Global().Set("localStorage", js.Undefined())
	if err := Local.Set("key", "text"); !errors.Is(err, ErrDenied) {
		t.Errorf("Set = %v, want %v", err, ErrDenied)
	}
	if _, err := Local.Keys(); !errors.Is(err, ErrDenied) {
		t.Errorf("Keys = %v, want %v", err, ErrDenied)
	}
}

// TestStoreOnLocal keeps a study there and opens it again.
func TestStoreOnLocal(t *testing.T) {
	s := withStorage(t, ample, "")
	id, _, err := tab(s, 1).Create(named(t, "mine"), "new")
	if err != nil {
		t.Fatal(err)
	}
	if got := nameOf(t, tab(s, 2), id); got != "mine" {
		t.Errorf("opened %q, want the study that was kept", got)
	}
}

// TestAreasAreApart keeps a text of one name in each.
func TestAreasAreApart(t *testing.T) {
	areas := []Area{Local, Tab}
	for _, a := range areas {
		withArea(t, a, ample, "")
		if err := a.Set("key", string(a)); err != nil {
			t.Fatal(err)
		}
	}
	for _, a := range areas {
		if text, ok, err := a.Get("key"); text != string(a) || !ok || err != nil {
			t.Errorf("%s: Get = %q, %t, %v", a, text, ok, err)
		}
	}
}
