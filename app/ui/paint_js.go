package ui

import (
	"strconv"
	"syscall/js"

	"toewright/app/scene"
)

// elements are those of the page that are painted, and their changes by their numbers.
type elements struct {
	list    js.Value // an array or the like
	changes batch
	buffer  js.Value // a Uint8Array that takes the changes over
	room    int      // of the buffer
}

// findElements returns the elements that a selector finds, in the order of the page.
func findElements(selector string) elements {
	return elements{list: js.Global().Get("document").Call("querySelectorAll", selector)}
}

// nodes are the picture's elements: those of the slots, then the handles, and the picture.
type nodes struct{ elements }

// findNodes returns the elements of the picture, which must be on the page.
func findNodes() *nodes {
	document, list := js.Global().Get("document"), js.Global().Get("Array").New()
	for i := range scene.SlotCount() {
		list.Call("push", document.Call("getElementById", scene.Slot(i).ID()))
	}
	for i := range scene.MaxHandles {
		list.Call("push", document.Call("getElementById", "h"+strconv.Itoa(i)))
	}
	list.Call("push", document.Call("getElementById", pictureID))
	return &nodes{elements{list: list}}
}

func (n *nodes) path(s scene.Slot, data []byte) { n.changes = n.changes.path(int(s), data) }

func (n *nodes) text(s scene.Slot, was, is scene.Text) {
	n.changes = n.changes.text(int(s), nodeText(was), nodeText(is))
}

func (n *nodes) grip(i int, was, is grip) {
	n.changes = n.changes.grip(scene.SlotCount()+i, was, is)
}

func (n *nodes) class(classes string) {
	n.changes = n.changes.set(scene.SlotCount()+scene.MaxHandles, "class", classes)
}

// done makes the changes in one call: one for each of them would take most of a frame.
func (e *elements) done() {
	if len(e.changes) == 0 {
		return
	}
	if e.room < len(e.changes) {
		e.room = 2 * len(e.changes)
		e.buffer = js.Global().Get("Uint8Array").New(e.room)
	}
	js.CopyBytesToJS(e.buffer, e.changes)
	js.Global().Get("toewright").Call("paint", e.list, e.buffer, len(e.changes))
	e.changes = e.changes[:0]
}

// figure leaves the text's node where it is: go-app knows it, and renders the same text
// when the hand is still.
func (n *nodes) figure(car int, text string) {
	if e := js.Global().Get("document").Call("getElementById", keyFigureID(car)); e.Truthy() {
		e.Get("firstChild").Set("nodeValue", text)
	}
}
