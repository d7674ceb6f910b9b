package main

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"slices"
)

// segment is what stands in memory when the program starts, from an offset on.
type segment struct {
	offset int64 // bytes
	data   []byte
}

// end returns the offset behind the segment.
func (s segment) end() int64 { return s.offset + int64(len(s.data)) }

// What an active segment of the first memory, with a constant for its offset, consists of.
const (
	activeSegment = 0x00
	constOpcode   = 0x41 // i32.const
	endOpcode     = 0x0b
)

// errKind is the error for a segment that Go's linker does not write.
var errKind = errors.New("is not of the kind that Go's linker writes, an active one with a constant offset")

// readSegments returns the segments of a data section, in their order.
func readSegments(content []byte) ([]segment, error) {
	r := reader{data: content}
	var all []segment
	for n := r.unsigned(); n > 0 && r.err == nil; n-- {
		kind, opcode := r.unsigned(), r.byte()
		offset, end := r.signed(), r.byte()
		if r.err == nil && (kind != activeSegment || opcode != constOpcode || end != endOpcode) {
			return nil, fmt.Errorf("segment %d %w", len(all), errKind)
		}
		all = append(all, segment{offset, r.bytes(r.unsigned())})
	}
	if r.err == nil && len(r.data) > 0 {
		r.err = fmt.Errorf("%d bytes are left behind the last segment", len(r.data))
	}
	return all, r.err
}

// join returns the segments in the order of their offsets, each with the next taken in
// where that begins after at most gap bytes. As memory is all zeros there this changes
// nothing in it. Segments that overlap stay as they are: the last one holds.
func join(segments []segment, gap int) []segment {
	sorted := slices.Clone(segments)
	slices.SortStableFunc(sorted, func(a, b segment) int { return cmp.Compare(a.offset, b.offset) })
	var all []segment
	for _, next := range sorted {
		var last *segment
		between := next.offset
		if len(all) > 0 {
			last = &all[len(all)-1]
			between -= last.end()
		}
		switch {
		case between < 0:
			return segments
		case last != nil && between <= int64(gap):
			last.data = append(append(last.data, make([]byte, between)...), next.data...)
		default:
			// A copy: what is taken in is put behind it.
			all = append(all, segment{next.offset, bytes.Clone(next.data)})
		}
	}
	return all
}

// appendSegments appends a data section's content.
func appendSegments(dst []byte, segments []segment) []byte {
	dst = appendUnsigned(dst, uint64(len(segments)))
	for _, s := range segments {
		dst = append(dst, activeSegment, constOpcode)
		dst = appendSigned(dst, s.offset)
		dst = append(dst, endOpcode)
		dst = appendUnsigned(dst, uint64(len(s.data)))
		dst = append(dst, s.data...)
	}
	return dst
}
