package ui

import (
	"strconv"
	"syscall/js"

	"toewright/app/scene"
)

// nodes are the picture's elements on the page.
type nodes struct {
	elements js.Value // an array: those of the slots, then the handles, and the picture
	changes  batch
	buffer   js.Value // a Uint8Array that takes the changes over
	room     int      // of the buffer
}

// findNodes returns the elements of the picture, which must be on the page.
func findNodes() *nodes {
	document := js.Global().Get("document")
	n := &nodes{elements: js.Global().Get("Array").New()}
	for i := range scene.SlotCount() {
		n.elements.Call("push", document.Call("getElementById", scene.Slot(i).ID()))
	}
	for i := range scene.MaxHandles {
		n.elements.Call("push", document.Call("getElementById", "h"+strconv.Itoa(i)))
	}
	n.elements.Call("push", document.Call("getElementById", pictureID))
	return n
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
func (n *nodes) done() {
	if len(n.changes) == 0 {
		return
	}
	if n.room < len(n.changes) {
		n.room = 2 * len(n.changes)
		n.buffer = js.Global().Get("Uint8Array").New(n.room)
	}
	js.CopyBytesToJS(n.buffer, n.changes)
	js.Global().Get("toewright").Call("paint", n.elements, n.buffer, len(n.changes))
	n.changes = n.changes[:0]
}

// figure leaves the text's node where it is: go-app knows it, and renders the same text
// when the hand is still.
func (n *nodes) figure(car int, text string) {
	if e := js.Global().Get("document").Call("getElementById", keyFigureID(car)); e.Truthy() {
		e.Get("firstChild").Set("nodeValue", text)
	}
}
