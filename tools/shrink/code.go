package main

import (
	"errors"
	"fmt"
)

// firstNumber is what the linker counts functions from in program counters (funcValueOffset in
// src/cmd/link/internal/wasm/asm.go of Go's source).
const firstNumber = 0x1000

// errBehind is the error for a code section that is longer than its functions.
var errBehind = errors.New("bytes are left behind the last function")

// simplify returns the content of a code section with its functions made simpler.
func simplify(content []byte) ([]byte, error) {
	r := reader{data: content}
	total := r.unsigned()
	out := appendUnsigned(make([]byte, 0, len(content)), total)
	for n := uint64(0); n < total && r.err == nil; n++ {
		text := r.bytes(r.unsigned())
		if r.err != nil {
			break
		}
		f, err := readFunction(text, firstNumber+int64(n))
		if err != nil {
			return nil, fmt.Errorf("the code section: function %d: %w", n, err)
		}
		if f.ours() {
			f.simplify()
			text = f.append(nil)
		}
		out = appendUnsigned(out, uint64(len(text)))
		out = append(out, text...)
	}
	if r.err == nil && len(r.data) > 0 {
		r.err = errBehind
	}
	if r.err != nil {
		return nil, fmt.Errorf("the code section: %w", r.err)
	}
	return out, nil
}

// simplify makes a compiled function simpler. It computes what it did.
func (f *function) simplify() {
	f.foldOffsets()
	f.joinSteps()
	f.simplifyJumps()
	f.shareNumber()
}
