package optimize

import (
	"iter"
	"math"

	"toewright/optimize/nlp"
)

// Tally counts values in bins, in a memory that does not grow with their number.
// Tallies of several lots, from one origin, add up to just the tally of all, in
// any order: counts are whole numbers.
//
// Bins lie on either side of an origin. Their edges are the numbers that so many
// bits after the leading one can write, as distances from it: with 7 bits no bin
// is wider than 1/128 of its distance.
type Tally struct {
	origin  float64
	bits    int
	total   int
	centre  int // values no farther than tallyFloor from the origin
	octaves [2 * tallyOctaves][]int
}

// Distances from the origin are told apart from 2^-40, a millionth of a millionth,
// to 2^8. Nearer ones count as the origin, farther ones into the last bin; no
// angle is that large.
const (
	tallyFloor   = 1.0 / (1 << 40)
	tallyOctaves = 48
)

// NewTally returns an empty tally about an origin, 1 to 16 bits fine.
func NewTally(origin float64, bits int) *Tally { return &Tally{origin: origin, bits: bits} }

// Total returns the number of values counted.
func (t *Tally) Total() int { return t.total }

// bins returns the number of bins on either side.
func (t *Tally) bins() int { return tallyOctaves << t.bits }

// Add counts a value, which must be a number.
func (t *Tally) Add(x float64) {
	*t.at(t.bin(x - t.origin))++
	t.total++
}

// bin returns the bin of a distance: 0 for the origin, positive above it.
func (t *Tally) bin(d float64) int {
	size := math.Abs(d)
	if size < tallyFloor {
		return 0
	}
	n := min(t.edgeBits(size)-t.edgeBits(tallyFloor)+1, t.bins())
	if d < 0 {
		return -n
	}
	return n
}

// mantissaBits are those of a float64 after the leading one.
const mantissaBits = 52

// edgeBits numbers the bins of all positive distances by the leading bits of
// their float64 form, which order as the distances do.
func (t *Tally) edgeBits(d float64) int {
	return int(math.Float64bits(d) >> (mantissaBits - t.bits))
}

// edge returns the lower edge of bin n > 0, a distance.
func (t *Tally) edge(n int) float64 {
	return math.Float64frombits(uint64(t.edgeBits(tallyFloor)+n-1) << (mantissaBits - t.bits))
}

// at returns the count of a bin.
func (t *Tally) at(bin int) *int {
	if bin == 0 {
		return &t.centre
	}
	side, n := 0, bin-1
	if bin < 0 {
		side, n = tallyOctaves, -bin-1
	}
	octave := &t.octaves[side+n>>t.bits]
	if *octave == nil {
		*octave = make([]int, 1<<t.bits)
	}
	return &(*octave)[n&(1<<t.bits-1)]
}

// Join counts the values of another tally of the same origin and bits.
func (t *Tally) Join(o *Tally) {
	for bin, n := range o.Counts() {
		*t.at(bin) += n
	}
	t.total += o.total
}

// Counts returns the bins that hold values, from the least value up, each with
// its count.
func (t *Tally) Counts() iter.Seq2[int, int] {
	return func(yield func(int, int) bool) {
		for bin := -t.bins(); bin <= t.bins(); bin++ {
			if t.empty(bin) {
				bin += 1<<t.bits - 1
				continue
			}
			if n := *t.at(bin); n > 0 && !yield(bin, n) {
				return
			}
		}
	}
}

// empty reports whether a bin is the first, going up, of an octave without values.
func (t *Tally) empty(bin int) bool {
	octave := 1 << t.bits
	switch {
	case bin > 0:
		return (bin-1)%octave == 0 && t.octaves[(bin-1)/octave] == nil
	case bin < 0:
		return -bin%octave == 0 && t.octaves[tallyOctaves-bin/octave-1] == nil
	}
	return false
}

// Put adds a count to a bin, as Counts gave it. It returns an error for a bin that
// there is not and a count that cannot be.
func (t *Tally) Put(bin, count int) error {
	if bin < -t.bins() || bin > t.bins() || count < 1 || count > math.MaxInt-t.total {
		return nlp.ProblemErrorf("a count of %d in bin %d, want 1 or more in a bin of %d to %d", count, bin, -t.bins(), t.bins())
	}
	*t.at(bin) += count
	t.total += count
	return nil
}

// Quantile returns the value below which a share of the values lies, linear
// between neighbours as [Quantiles]; NaN where there are none. Values count as
// evenly spread within their bin: where their density is smooth the error is far
// below the bin's width, and with 7 bits below what chance does to the 95 % point
// of 10⁹ values.
func (t *Tally) Quantile(share float64) float64 { return t.quantileOf(share, t.total) }

// quantileOf is Quantile of so many values, of which those not counted lie above all
// others: NaN where the share falls among them.
func (t *Tally) quantileOf(share float64, values int) float64 {
	rank := share * float64(values-1)
	below := int(rank)
	if above := int(math.Ceil(rank)); values == 0 || above >= t.total {
		return math.NaN()
	}
	part, low := rank-float64(below), t.ranked(below)
	if part == 0 {
		return low
	}
	return low + part*(t.ranked(below+1)-low)
}

// ranked returns the value that so many values are below.
func (t *Tally) ranked(rank int) float64 {
	for bin, n := range t.Counts() {
		if rank < n {
			return t.within(bin, (float64(rank)+0.5)/float64(n))
		}
		rank -= n
	}
	return math.NaN()
}

// within returns the value at a share of the way through a bin, going up.
func (t *Tally) within(bin int, share float64) float64 {
	if bin == 0 {
		return t.origin
	}
	sign := 1.0
	if bin < 0 {
		bin, share, sign = -bin, 1-share, -1
	}
	low, high := t.edge(bin), t.edge(bin+1)
	return t.origin + sign*(low+share*(high-low))
}
