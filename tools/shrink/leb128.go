package main

import (
	"encoding/binary"
	"errors"
	"io"
)

// reader reads a program from its beginning. The first error stays, and all that is read
// after it is zero.
type reader struct {
	data []byte
	err  error
}

var errTooLong = errors.New("a number is longer than the format allows")

// fail has the reader end with an error, unless it has ended.
func (r *reader) fail(err error) {
	if r.err == nil {
		r.err = err
	}
}

// byte reads a byte.
func (r *reader) byte() byte {
	b := r.bytes(1)
	if r.err != nil {
		return 0
	}
	return b[0]
}

// bytes reads n bytes.
func (r *reader) bytes(n uint64) []byte {
	if r.err == nil && n > uint64(len(r.data)) {
		r.err = io.ErrUnexpectedEOF
	}
	if r.err != nil {
		return nil
	}
	b := r.data[:n]
	r.data = r.data[n:]
	return b
}

// unsigned reads a number in unsigned LEB128, which is encoding/binary's variable-length
// encoding.
func (r *reader) unsigned() uint64 {
	x, n := binary.Uvarint(r.data)
	switch {
	case r.err != nil:
		return 0
	case n == 0:
		r.err = io.ErrUnexpectedEOF
		return 0
	case n < 0:
		r.err = errTooLong
		return 0
	}
	r.data = r.data[n:]
	return x
}

// signed reads a number in signed LEB128, whose last byte holds the sign in its bit 6.
func (r *reader) signed() int64 {
	var x int64
	for shift := 0; shift < 64; shift += 7 {
		b := r.byte()
		x |= int64(b&0x7f) << shift
		if b&0x80 == 0 {
			if unused := 64 - (shift + 7); unused > 0 {
				x = x << unused >> unused
			}
			return x
		}
	}
	if r.err == nil {
		r.err = errTooLong
	}
	return 0
}

// appendUnsigned appends a number in unsigned LEB128.
func appendUnsigned(dst []byte, x uint64) []byte { return binary.AppendUvarint(dst, x) }

// appendSigned appends a number in signed LEB128.
func appendSigned(dst []byte, x int64) []byte {
	for {
		b := byte(x & 0x7f)
		x >>= 7
		if x == 0 && b&0x40 == 0 || x == -1 && b&0x40 != 0 {
			return append(dst, b)
		}
		dst = append(dst, b|0x80)
	}
}
