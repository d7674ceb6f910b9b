package scene

import (
	"strconv"
	"strings"
)

// Markup returns the picture with every node empty, as an SVG element of an id. Its
// nodes have the ids of their slots; handles are grouped in an element of the id
// "handles", each a group of the id "h" and its number.
func Markup(id string) string {
	b := put(nil, `<svg id="`, id, `" xmlns="http://www.w3.org/2000/svg" class="`, classOf(0, 0), `" role="group" aria-label="Drawing of the axle">`)
	group := ""
	for i, n := range nodes.list {
		if n.group != group {
			if group != "" {
				b = put(b, "</g>")
			}
			b = n.open(b)
			group = n.group
		}
		b = n.markup(b, Slot(i))
	}
	b = put(b, `</g><g id="handles" class="handles">`)
	for i := range MaxHandles {
		b = put(b, `<g id="h`, strconv.Itoa(i), `" role="slider" aria-orientation="vertical"`, HiddenHandle, `><circle class="reach" r="22"/><circle class="grip" r="9"/></g>`)
	}
	return string(put(b, "</g></svg>"))
}

// put appends texts. Package fmt would have a browser compile much before its first frame.
func put(b []byte, texts ...string) []byte {
	for _, t := range texts {
		b = append(b, t...)
	}
	return b
}

// open returns the start of the group of a node. A group that begins with a clip is cut
// to it.
func (n node) open(b []byte) []byte {
	b = put(b, `<g class="`, n.group, `" aria-hidden="true"`)
	if n.kind == clipNode {
		b = put(b, ` clip-path="url(#`, n.clipID(), `)"`)
	}
	return put(b, ">")
}

// clipID returns the id of the clip of a node's group.
func (n node) clipID() string { return "clip-" + strings.ReplaceAll(n.group, " ", "-") }

// HiddenHandle are the attributes of a handle that is not there.
const HiddenHandle = ` display="none" class="handle" aria-hidden="true" aria-valuenow="0.00" aria-valuemin="0.00" aria-valuemax="0.00"`

// markup appends a node that is empty.
func (n node) markup(b []byte, s Slot) []byte {
	switch id := s.ID(); n.kind {
	case clipNode:
		return put(b, `<clipPath id="`, n.clipID(), `"><path id="`, id, `"/></clipPath>`)
	case textNode:
		return put(b, `<text id="`, id, `" class="`, n.class, `" text-anchor="`, n.align.String(), `"></text>`)
	default:
		return put(b, `<path id="`, id, `" class="`, n.class, `"/>`)
	}
}
