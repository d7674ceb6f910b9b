package ui

import (
	"strconv"
	"strings"
	"syscall/js"

	"toewright/app/scene"
	"toewright/internal/plot"
)

// wires join the drawing to the page: events in, frames out. They call the drawing
// directly, since go-app's own handlers come a frame late.
type wires struct {
	picture  js.Value
	frame    js.Func
	watcher  js.Value
	releases []func()
	corner   plot.Point // of the picture, in the window
	cornered bool       // corner is known
}

// join connects the drawing with the picture on the page.
func (w *wires) join(d *drawing) {
	w.picture = js.Global().Get("document").Call("getElementById", pictureID)
	d.painter = newPainter(findNodes())
	w.frame = js.FuncOf(func(_ js.Value, args []js.Value) any {
		d.frame(args[0].Float() / 1000)
		return nil
	})
	d.ask = func() { js.Global().Call("requestAnimationFrame", w.frame) }
	w.lose(js.Global(), "scroll", "resize")
	w.lose(w.picture, "pointerenter", "pointerdown")
	w.on("pointerdown", func(e js.Value) { w.down(d, e) })
	w.on("pointermove", func(e js.Value) { d.move(w.at(e), e.Get("altKey").Bool()) })
	for _, end := range []string{"pointerup", "pointercancel", "lostpointercapture"} {
		w.on(end, func(js.Value) { d.up() })
	}
	w.on("pointerleave", func(js.Value) { d.move(plot.Point{X: -1, Y: -1}, false) })
	w.on("focusin", func(e js.Value) { d.focus(handleOf(e)) })
	w.on("keydown", func(e js.Value) { w.key(d, e) })
	w.watch(d)
}

// on listens to an event of the picture.
func (w *wires) on(event string, do func(js.Value)) { w.listen(w.picture, event, false, do) }

// lose forgets where the picture stands at events of a target or of what is in it.
func (w *wires) lose(target js.Value, events ...string) {
	for _, event := range events {
		w.listen(target, event, true, func(js.Value) { w.cornered = false })
	}
}

// listen listens to an event of a target, or of all that is in it.
func (w *wires) listen(target js.Value, event string, within bool, do func(js.Value)) {
	f := js.FuncOf(func(_ js.Value, args []js.Value) any {
		do(args[0])
		return nil
	})
	target.Call("addEventListener", event, f, within)
	w.releases = append(w.releases, func() {
		target.Call("removeEventListener", event, f, within)
		f.Release()
	})
}

// watch draws at once and anew at each change of the picture's size, in the very frame
// that shows it.
func (w *wires) watch(d *drawing) {
	w.fit(d)
	f := js.FuncOf(func(js.Value, []js.Value) any {
		w.fit(d)
		return nil
	})
	w.watcher = js.Global().Get("ResizeObserver").New(f)
	w.watcher.Call("observe", w.picture)
	w.releases = append(w.releases, f.Release)
}

// fit draws for the size that the picture has on the page, if that is another than
// before.
func (w *wires) fit(d *drawing) {
	box := w.picture.Call("getBoundingClientRect")
	size := scene.Size{Width: box.Get("width").Float(), Height: box.Get("height").Float()}
	w.cornered = false
	if size == d.size {
		return
	}
	d.size = size
	w.picture.Call("setAttribute", "viewBox", "0 0 "+coordinate(size.Width)+" "+coordinate(size.Height))
	d.paint()
}

// at returns the place of a pointer on the picture. Where the picture stands is asked
// once, as the browser lays the page out anew before it answers.
func (w *wires) at(e js.Value) plot.Point {
	if !w.cornered {
		box := w.picture.Call("getBoundingClientRect")
		w.corner = plot.Point{X: box.Get("left").Float(), Y: box.Get("top").Float()}
		w.cornered = true
	}
	return plot.Point{X: e.Get("clientX").Float(), Y: e.Get("clientY").Float()}.Sub(w.corner)
}

// down takes hold, and follows the pointer wherever it goes until it is lifted.
func (w *wires) down(d *drawing, e js.Value) {
	if e.Get("button").Int() != 0 || !d.down(w.at(e)) {
		return
	}
	w.picture.Call("setPointerCapture", e.Get("pointerId"))
	e.Call("preventDefault")
	if i := d.hand.index(); i >= 0 && d.stage.Handles()[i].Focus {
		focusHandle(i)
	}
}

// focusHandle gives a handle the focus of the keyboard.
func focusHandle(i int) {
	js.Global().Get("document").Call("getElementById", "h"+strconv.Itoa(i)).Call("focus",
		map[string]any{"preventScroll": true, "focusVisible": false})
}

// key passes a key on to the handle that has the focus.
func (w *wires) key(d *drawing, e js.Value) {
	if d.key(handleOf(e), e.Get("key").String(), e.Get("shiftKey").Bool()) {
		e.Call("preventDefault")
	}
}

// handleOf returns the number of the handle that an event is about, or -1.
func handleOf(e js.Value) int {
	number, ok := strings.CutPrefix(e.Get("target").Get("id").String(), "h")
	i, err := strconv.Atoi(number)
	if !ok || err != nil {
		return -1
	}
	return i
}

// part lets go of the page.
func (w *wires) part(d *drawing) {
	d.ask, d.painter, d.size = func() {}, nil, scene.Size{}
	w.watcher.Call("disconnect")
	for _, release := range w.releases {
		release()
	}
	w.releases = nil
	w.frame.Release()
}

// wantsNoMotion reports whether the reader asked the system for less motion.
func wantsNoMotion() bool {
	return js.Global().Call("matchMedia", "(prefers-reduced-motion: reduce)").Get("matches").Bool()
}
