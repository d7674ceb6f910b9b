package ui

import (
	"strconv"
	"strings"
)

// batch is a list of changes of elements, which the function paint of boot/paint.js makes in one
// call: for each the number of the element, the name of an attribute, "" for the text, and
// its value, "" to take the attribute away. A [stop] ends each of the three.
type batch []byte

// stop is a control character, which no element shows.
const stop = "\x1f"

// begin appends the start of a change, without its value.
func (b batch) begin(element int, attribute string) batch {
	b = append(strconv.AppendInt(b, int64(element), 10), stop...)
	return append(append(b, attribute...), stop...)
}

// path appends a change of a path's data.
func (b batch) path(element int, data []byte) batch {
	return append(append(b.begin(element, "d"), data...), stop...)
}

// set appends a change of an attribute, of the text if its name is "".
func (b batch) set(element int, attribute, value string) batch {
	return append(append(b.begin(element, attribute), strings.ReplaceAll(value, stop, "")...), stop...)
}

// text appends what differs between two texts.
func (b batch) text(element int, was, is nodeText) batch {
	before, after := was.attributes(), is.attributes()
	return b.differences(element, before[:], after[:])
}

// grip appends what differs between two handles.
func (b batch) grip(element int, was, is grip) batch {
	before, after := was.attributes(), is.attributes()
	return b.differences(element, before[:], after[:])
}

// differences appends the attributes that differ between two lists of the same names.
func (b batch) differences(element int, before, after []nodeAttribute) batch {
	for i, a := range after {
		if a != before[i] {
			b = b.set(element, a.name, a.value)
		}
	}
	return b
}
