//go:build unix

package main

import (
	"fmt"
	"os"
	"path"
	"slices"
	"strings"
)

// mutant is one change of one statement.
type mutant struct {
	file       string // from the root of the module
	line       int
	function   string // in which it is, with its receiver
	kind       string
	start, end int // bytes of the file that are replaced
	body       span
	old, new   string
}

// span is the inside of a function's body, in bytes of its file.
type span struct {
	start, end int
	void       bool // whether the function has no results, and so may end without a return
}

// id says which mutant it is, whatever moves around it: lines are not part of it.
func (m *mutant) id() string {
	return fmt.Sprintf("%s %s: %s -> %s", m.file, m.function, oneLine(m.old), oneLine(m.new))
}

// folder returns the package that is changed, from the root of the module.
func (m *mutant) folder() string { return path.Dir(m.file) }

// apply returns the changed file.
func (m *mutant) apply(source []byte) []byte {
	return slices.Concat(source[:m.start], []byte(m.new), source[m.end:])
}

// changedBody returns the body of the changed function, with a return at its end.
func (m *mutant) changedBody(source []byte) []byte {
	end := ""
	if m.body.void {
		end = "\nreturn"
	}
	return slices.Concat(source[m.body.start:m.start], []byte(m.new), source[m.end:m.body.end], []byte(end))
}

// source returns the file as it is.
func (m *mutant) source() ([]byte, error) { return os.ReadFile(m.file) }

// oneLine returns code with its line ends and indents as single spaces.
func oneLine(code string) string { return strings.Join(strings.Fields(code), " ") }
