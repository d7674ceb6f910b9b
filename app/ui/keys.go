package ui

import (
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// stroke is a key that means something on the whole page: its letter, with ctrl or alt
// and perhaps shift before it.
func stroke(e app.Value) string {
	key := strings.ToLower(e.Get("key").String())
	if e.Get("shiftKey").Bool() {
		key = "shift " + key
	}
	switch {
	case e.Get("ctrlKey").Bool() || e.Get("metaKey").Bool():
		return "ctrl " + key
	case e.Get("altKey").Bool():
		return "alt " + key
	}
	return key
}

// deed returns what a stroke does, nil for nothing.
func (p *Panels) deed(stroke string) func(app.Context) {
	if p.over == showOver { // has keys of its own
		return nil
	}
	switch stroke {
	case "escape":
		if p.menu != "" {
			return func(app.Context) { p.closeMenu() }
		}
	case "ctrl k":
		return p.cover(paletteOver)
	case "?", "shift ?":
		return p.cover(keymapOver)
	case "ctrl s":
		return p.saveFile
	case "ctrl z":
		return p.undo
	case "ctrl y", "ctrl shift z":
		return p.redo
	}
	for i, s := range steps {
		if key := stepKey(i); stroke == key || stroke == "alt "+key {
			return func(ctx app.Context) { p.show(ctx, s.key) }
		}
	}
	return nil
}

// fieldStrokes are left to a field of text: it undoes by itself, and takes letters and
// digits. In a cell where nothing is typed there is nothing of its own to undo.
var fieldStrokes = []string{"ctrl z", "ctrl y", "ctrl shift z", "?", "shift ?", "1", "2", "3", "4", "5"}

// key does what a key means, if anything. It runs outside the page's goroutine.
func (p *Panels) key(ctx app.Context, e app.Value) {
	name := stroke(e)
	do := p.deed(name)
	if do == nil || slices.Contains(fieldStrokes, name) && typing(e) && !(strings.HasPrefix(name, "ctrl") && p.pointing.walks(e)) {
		return
	}
	e.Call("preventDefault") // at once; what the key does waits for the page's goroutine
	ctx.Dispatch(do)
}

// typing reports whether an event comes from a field of text.
func typing(e app.Value) bool {
	target := e.Get("target")
	switch strings.ToLower(target.Get("tagName").String()) {
	case "textarea", "select":
		return true
	case "input":
		kind := target.Get("type").String()
		return kind == "text" || kind == "search"
	}
	return false
}
