package main

import (
	"errors"
	"fmt"
)

// What an active segment of the first memory, with a constant for its offset, consists of.
const (
	activeSegment = 0x00
	constOpcode   = 0x41 // i32.const
	endOpcode     = 0x0b
)

const (
	// gap is the longest run of zeros, in bytes, that stands within a segment.
	gap = 1024
	// mostMemory bounds what a damaged offset can make of memory, in bytes.
	mostMemory = 1 << 28
)

// errKind is the error for a segment that Go's linker does not write.
var errKind = errors.New("is not of the kind that Go's linker writes, an active one with a constant offset")

// readMemory returns what the segments of a data section put into memory, from its beginning
// to the last byte that is put there. Where two overlap the later one holds.
func readMemory(content []byte) ([]byte, error) {
	r := reader{data: content}
	var memory []byte
	total := r.unsigned()
	for n := uint64(0); n < total && r.err == nil; n++ {
		kind, opcode := r.unsigned(), r.byte()
		offset, end := r.signed(), r.byte()
		data := r.bytes(r.unsigned())
		switch {
		case r.err != nil:
		case kind != activeSegment || opcode != constOpcode || end != endOpcode:
			return nil, fmt.Errorf("segment %d %w", n, errKind)
		case offset < 0 || offset > mostMemory-int64(len(data)):
			return nil, fmt.Errorf("segment %d begins at byte %d, beyond what a program of ours has", n, offset)
		default:
			if more := int(offset) + len(data) - len(memory); more > 0 {
				memory = append(memory, make([]byte, more)...)
			}
			copy(memory[offset:], data)
		}
	}
	if r.err == nil && len(r.data) > 0 {
		r.err = fmt.Errorf("%d bytes are left behind the last segment", len(r.data))
	}
	return memory, r.err
}

// appendMemory appends a data section's content: a segment for each stretch of memory without
// more than gap zeros on end.
func appendMemory(dst, memory []byte) []byte {
	var n uint64
	var segments []byte
	for at := 0; at < len(memory); {
		from := at + zeros(memory[at:])
		to := from
		for to < len(memory) {
			if run := zeros(memory[to:]); run > gap || to+run == len(memory) {
				break
			} else {
				to += run + 1
			}
		}
		if to > from {
			n++
			segments = append(segments, activeSegment, constOpcode)
			segments = appendSigned(segments, int64(from))
			segments = append(segments, endOpcode)
			segments = appendUnsigned(segments, uint64(to-from))
			segments = append(segments, memory[from:to]...)
		}
		at = to + 1
	}
	return append(appendUnsigned(dst, n), segments...)
}

// zeros returns with how many zeros the bytes begin.
func zeros(b []byte) int {
	for i, x := range b {
		if x != 0 {
			return i
		}
	}
	return len(b)
}
