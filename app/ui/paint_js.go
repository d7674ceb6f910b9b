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

func (n *nodes) grip(i int, g grip) {
	e := n.handles[i]
	set := func(name, value string) { e.Call("setAttribute", name, value) }
	if !g.Shown {
		set("display", "none")
		e.Call("removeAttribute", "tabindex")
		return
	}
	e.Call("removeAttribute", "display")
	set("transform", "translate("+coordinate(g.X)+" "+coordinate(g.Y)+")")
	set("class", g.class())
	set("aria-label", g.Label)
	set("aria-valuenow", coordinate(g.Value))
	set("aria-valuemin", coordinate(g.Low))
	set("aria-valuemax", coordinate(g.High))
	set("aria-valuetext", g.Spoken)
	if g.Focus {
		set("tabindex", "0")
		e.Call("removeAttribute", "aria-hidden")
	} else {
		e.Call("removeAttribute", "tabindex")
		set("aria-hidden", "true")
	}
}

// coordinate writes a number as SVG reads it, to a hundredth of a unit of the paper.
func coordinate(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }
