package main

import (
	"bytes"
	"slices"
)

// The runtime asks for names: whether a function is its own (isSystemGoroutine in
// src/runtime/traceback.go), which two of package reflect are (getArgInfo in stkframe.go), and of
// a method that is called by a nil pointer, whose receiver is no pointer, what it is called
// (panicwrap in error.go), which it takes apart at ".(*" and ")." or stops the program.
var (
	ownName, methodName = []byte("runtime.?"), []byte("?.(*?).?")
	ownMethodName       = []byte("runtime.(*?).?")
	reflectNames        = [][]byte{[]byte("reflect.makeFuncStub"), []byte("reflect.methodValueCall")}
)

// nameList is the text of the names that are left, each with a zero behind it. The first is none.
type nameList struct{ text []byte }

// newNames returns the names that are left.
func newNames() nameList {
	names := slices.Concat([][]byte{nil, ownName, methodName, ownMethodName}, reflectNames)
	return nameList{append(bytes.Join(names, []byte{0}), 0)}
}

// at returns where the name begins that is left of one.
func (l nameList) at(name []byte) uint32 {
	own, method := bytes.HasPrefix(name, []byte("runtime.")), bytes.Contains(name, []byte(".(*"))
	switch {
	case slices.ContainsFunc(reflectNames, func(n []byte) bool { return bytes.Equal(n, name) }):
		return l.begin(name)
	case own && method:
		return l.begin(ownMethodName)
	case own:
		return l.begin(ownName)
	case method:
		return l.begin(methodName)
	}
	return 0
}

// begin returns where a name that is left begins.
func (l nameList) begin(name []byte) uint32 {
	return uint32(bytes.Index(l.text, slices.Concat([]byte{0}, name, []byte{0})) + 1)
}
