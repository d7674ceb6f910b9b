package jsonplan

import (
	"math"
	"strconv"
	"sync"
)

// text is a text that is being written. It remembers the numbers in it: to find the fewest
// digits of a number takes most of the time, and half of an answer's numbers stand in it
// twice, as those of the one side of a car that is alike on both, or its mirror image.
type text struct {
	b       []byte
	written [1 << remembered]place
}

// remembered is the logarithm of how many numbers are remembered: those of fifty positions
// of a wheel, in 32 kB.
const remembered = 11

// place is where a number stands in the text.
type place struct {
	bits uint64 // of the number without its sign
	at   int32
	size int32 // in bytes; 0 where none stands
}

// texts are at rest between answers.
var texts = sync.Pool{New: func() any { return new(text) }}

// add appends what is written as it stands.
func (t *text) add(s string) { t.b = append(t.b, s...) }

// isPlain reports whether a number of a size has no exponent in any form, and is therefore
// written by [text.number].
func isPlain(size float64) bool { return size >= 1e-4 && size < 1e6 || size == 0 }

// number appends a number without an exponent.
func (t *text) number(x float64) {
	const mix = 0x9e3779b97f4a7c15 // 2^64 over the golden ratio, which spreads neighbours
	if math.Signbit(x) {
		t.b, x = append(t.b, '-'), -x
	}
	bits := math.Float64bits(x)
	p := &t.written[bits*mix>>(64-remembered)]
	if p.size > 0 && p.bits == bits {
		t.b = append(t.b, t.b[p.at:p.at+p.size]...)
		return
	}
	from := len(t.b)
	t.b = strconv.AppendFloat(t.b, x, 'f', -1, 64)
	if from <= math.MaxInt32 {
		*p = place{bits, int32(from), int32(len(t.b) - from)}
	}
}
