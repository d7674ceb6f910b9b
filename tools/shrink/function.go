package main

import "errors"

// Types of locals.
const (
	typeI32 = 0x7f
	typeI64 = 0x7e
)

// Numbers that Go's linker gives: local 0 holds at which place a function goes on, local 1 what
// global 0 does, the stack pointer. See src/cmd/internal/obj/wasm/wasmobj.go in Go's source.
const (
	placeLocal    = 0
	stackLocal    = 1
	stackGlobal   = 0
	firstRegister = 2 // of the locals that hold values
)

// function is a function of Go's.
type function struct {
	number int64 // what program counters in it hold above their lower 16 bits
	locals []locals
	code   []instruction
}

// locals are some locals of one type.
type locals struct {
	count uint64
	kind  byte
}

// errFunction is the error for a function that is not read to its end.
var errFunction = errors.New("a function does not end with end")

// readFunction reads a function as it stands in the code section.
func readFunction(text []byte, number int64) (function, error) {
	f, r := function{number: number}, reader{data: text}
	for n := r.unsigned(); n > 0 && r.err == nil; n-- {
		f.locals = append(f.locals, locals{r.unsigned(), r.byte()})
	}
	for r.err == nil && len(r.data) > 0 {
		f.code = append(f.code, r.instruction())
	}
	if n := len(f.code); r.err == nil && (n == 0 || f.code[n-1].op != end) {
		r.err = errFunction
	}
	return f, r.err
}

// append appends a function as it stands in the code section.
func (f function) append(dst []byte) []byte {
	dst = appendUnsigned(dst, uint64(len(f.locals)))
	for _, l := range f.locals {
		dst = append(appendUnsigned(dst, l.count), l.kind)
	}
	for _, in := range f.code {
		dst = append(dst, in.text...)
	}
	return dst
}

// ours reports whether a function was compiled, so that its locals are used as Go does: some of the
// runtime's were written by hand.
func (f function) ours() bool {
	return len(f.locals) > 0 && f.locals[0] == locals{1, typeI32} && f.has(0, getGlobal, setLocal) &&
		f.code[0].arg == stackGlobal && f.code[1].arg == stackLocal
}

// has reports whether instructions of these operations stand from an index on.
func (f function) has(at int, ops ...byte) bool { return hasAt(f.code, at, ops...) }

// hasAt reports whether instructions of these operations stand in code from an index on.
func hasAt(code []instruction, at int, ops ...byte) bool {
	if at < 0 || at+len(ops) > len(code) {
		return false
	}
	for i, op := range ops {
		if code[at+i].op != op {
			return false
		}
	}
	return true
}
