package optimize

import "math/bits"

// Span is a run of numbered items, such as cars of a series: those from First up
// to End, without it.
type Span struct{ First, End int }

// Len returns the number of items.
func (s Span) Len() int { return s.End - s.First }

// Of returns part i of n parts of the span, 0 <= i < n, which follow one another
// without gap and differ in length by one at most.
func (s Span) Of(i, n int) Span {
	return Span{s.First + portion(s.Len(), i, n), s.First + portion(s.Len(), i+1, n)}
}

// portion returns the whole part of x·i/n, 0 <= i <= n, however large x·i is.
func portion(x, i, n int) int {
	high, low := bits.Mul64(uint64(x), uint64(i))
	quotient, _ := bits.Div64(high, low, uint64(n))
	return int(quotient)
}

// chunk returns chunk number i of the span, each of so many items, the last one
// of what is left; of length 0 beyond it.
func (s Span) chunk(i, of int) Span {
	return Span{min(s.First+i*of, s.End), min(s.First+(i+1)*of, s.End)}
}
