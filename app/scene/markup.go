package scene

import (
	"fmt"
	"strings"
)

// Markup returns the picture with every node empty, as an SVG element of an id. Its
// nodes have the ids of their slots; handles are grouped in an element of the id
// "handles", each a group of the id "h" and its number.
func Markup(id string) string {
	b := fmt.Appendf(nil, `<svg id="%s" xmlns="http://www.w3.org/2000/svg" class="%s" role="group" aria-label="Drawing of the axle">`, id, classOf(0, 0))
	group := ""
	for i, n := range nodes.list {
		if n.group != group {
			if group != "" {
				b = append(b, "</g>"...)
			}
			b = n.open(b)
			group = n.group
		}
		b = n.markup(b, Slot(i))
	}
	b = append(b, `</g><g id="handles" class="handles">`...)
	for i := range MaxHandles {
		b = fmt.Appendf(b, `<g id="h%d" role="slider" aria-orientation="vertical"`+HiddenHandle+`><circle class="reach" r="22"/><circle class="grip" r="9"/></g>`, i)
	}
	return string(append(b, "</g></svg>"...))
}

// open returns the start of the group of a node. A group that begins with a clip is cut
// to it.
func (n node) open(b []byte) []byte {
	if n.kind == clipNode {
		return fmt.Appendf(b, `<g class="%s" aria-hidden="true" clip-path="url(#%s)">`, n.group, n.clipID())
	}
	return fmt.Appendf(b, `<g class="%s" aria-hidden="true">`, n.group)
}

// clipID returns the id of the clip of a node's group.
func (n node) clipID() string { return "clip-" + strings.ReplaceAll(n.group, " ", "-") }

// HiddenHandle are the attributes of a handle that is not there.
const HiddenHandle = ` display="none" class="handle" aria-hidden="true" aria-valuenow="0.00" aria-valuemin="0.00" aria-valuemax="0.00"`

func (n node) markup(b []byte, s Slot) []byte {
	switch n.kind {
	case clipNode:
		return fmt.Appendf(b, `<clipPath id="%s"><path id="%s"/></clipPath>`, n.clipID(), s.ID())
	case textNode:
		return fmt.Appendf(b, `<text id="%s" class="%s" text-anchor="%s"></text>`, s.ID(), n.class, n.align)
	}
	return fmt.Appendf(b, `<path id="%s" class="%s"/>`, s.ID(), n.class)
}
