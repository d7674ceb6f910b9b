package strictjson

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"
)

// Error reports the first thing in the input that cannot be used.
type Error struct {
	Path    string // Path names the value, like "suspension.left.toe"; empty for the input as a whole.
	Line    int    // Line counts from 1; 0 where the place is not known.
	Column  int    // Column counts characters from 1.
	Message string // Message says what is wrong and what to do.
}

// Error gives the place, the path and the message in one line.
func (e *Error) Error() string {
	var b strings.Builder
	if e.Line > 0 {
		fmt.Fprintf(&b, "%d:%d: ", e.Line, e.Column)
	}
	if e.Path != "" {
		b.WriteString(e.Path)
		b.WriteString(": ")
	}
	b.WriteString(e.Message)
	return b.String()
}

// place returns the line and column of a byte offset, both from 1. An offset
// beyond the data stands for its end.
func place(data []byte, offset int) (line, column int) {
	before := data[:min(max(offset, 0), len(data))]
	line = 1 + bytes.Count(before, []byte{'\n'})
	start := bytes.LastIndexByte(before, '\n') + 1
	return line, 1 + utf8.RuneCount(before[start:])
}
