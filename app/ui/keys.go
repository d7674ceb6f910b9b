package ui

import (
	"slices"
	"strconv"
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
	switch stroke {
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
	if digit, ok := strings.CutPrefix(stroke, "alt "); ok {
		if i, err := strconv.Atoi(digit); err == nil && i >= 1 && i <= len(tabs) {
			return func(ctx app.Context) { p.show(ctx, tabs[i-1].key) }
		}
	}
	return nil
}

// fieldStrokes are left to a field of text: it undoes by itself, and takes letters.
var fieldStrokes = []string{"ctrl z", "ctrl y", "ctrl shift z", "?", "shift ?"}

// key does what a key means, if anything. It runs outside the page's goroutine.
func (p *Panels) key(ctx app.Context, e app.Value) {
	name := stroke(e)
	do := p.deed(name)
	if do == nil || slices.Contains(fieldStrokes, name) && typing(e) {
		return
	}
	e.Call("preventDefault") // at once; what the key does waits for the page's goroutine
	ctx.Dispatch(do)
}

// typing reports whether an event comes from a field of text.
func typing(e app.Value) bool {
	target := e.Get("target")
	switch strings.ToLower(target.Get("tagName").String()) {
	case "textarea":
		return true
	case "input":
		kind := target.Get("type").String()
		return kind == "text" || kind == "search"
	}
	return false
}
