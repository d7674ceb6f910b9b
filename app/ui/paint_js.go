package ui

import (
	"strconv"
	"syscall/js"

	"toewright/app/scene"
)

// nodes are the picture's elements on the page.
type nodes struct {
	slots   []js.Value
	handles []js.Value
}

// findNodes returns the elements of the picture, which must be on the page.
func findNodes() *nodes {
	document := js.Global().Get("document")
	n := &nodes{}
	for i := range scene.SlotCount() {
		n.slots = append(n.slots, document.Call("getElementById", scene.Slot(i).ID()))
	}
	for i := range scene.MaxHandles {
		n.handles = append(n.handles, document.Call("getElementById", "h"+strconv.Itoa(i)))
	}
	return n
}

func (n *nodes) path(s scene.Slot, data []byte) {
	n.slots[s].Call("setAttribute", "d", string(data))
}

func (n *nodes) text(s scene.Slot, t scene.Text) {
	e := n.slots[s]
	e.Set("textContent", t.Content)
	if t.Content == "" {
		return
	}
	x, y := coordinate(t.At.X), coordinate(t.At.Y)
	e.Call("setAttribute", "x", x)
	e.Call("setAttribute", "y", y)
	e.Call("setAttribute", "text-anchor", t.Align.String())
	if t.Turn != 0 {
		e.Call("setAttribute", "transform", "rotate("+coordinate(t.Turn)+" "+x+" "+y+")")
	} else {
		e.Call("removeAttribute", "transform")
	}
}

// figure leaves the text's node where it is: go-app knows it, and renders the same text
// when the hand is still.
func (n *nodes) figure(car int, text string) {
	if e := js.Global().Get("document").Call("getElementById", keyFigureID(car)); e.Truthy() {
		e.Get("firstChild").Set("nodeValue", text)
	}
}

func (n *nodes) grip(i int, was, is grip) {
	before, after := was.attributes(), is.attributes()
	for k, a := range after {
		switch {
		case a == before[k]:
		case a.value == "":
			n.handles[i].Call("removeAttribute", a.name)
		default:
			n.handles[i].Call("setAttribute", a.name, a.value)
		}
	}
}
