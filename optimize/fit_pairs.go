package optimize

import (
	"math"
	"sort"
)

// Pair is two unknowns that the readings leave open one by one, but not together:
// those of inner and outer ball height, whose difference is the tie rod's slope.
type Pair struct {
	A, B int // unknowns
	// Sum says that it is A + B that is settled, else A - B.
	Sum        bool
	SD, Before float64 // standard deviation of that after and before the readings
}

// pairGain is how much better than each of its unknowns a pair has to be known.
const pairGain = 0.5

// Pairs returns the pairs of unknowns of one quantity, the best settled first,
// whose sum or difference is known at least twice as well, against what was known
// before, as the better known of the two.
func (f *FittedCar) Pairs() []Pair {
	var out []Pair
	for b := range f.Unknowns {
		for a := range b {
			if p, ok := f.pair(a, b); ok {
				out = append(out, p)
			}
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].SD/out[i].Before < out[j].SD/out[j].Before })
	return out
}

func (f *FittedCar) pair(a, b int) (Pair, bool) {
	u, v := &f.Unknowns[a], &f.Unknowns[b]
	if u.Kind != v.Kind || u.Kind == GaugeSlopeUnknown || u.Kind == MarkUnknown || u.Parameter.Quantity != v.Parameter.Quantity {
		return Pair{}, false
	}
	both := f.Covariance.At(a, a) + f.Covariance.At(b, b)
	shared := 2 * f.Covariance.At(a, b)
	p := Pair{A: a, B: b, Sum: shared < 0, Before: math.Hypot(u.SD, v.SD)}
	p.SD = math.Sqrt(math.Max(both-math.Abs(shared), 0))
	alone := math.Min(f.SD(a)/u.SD, f.SD(b)/v.SD)
	return p, p.SD/p.Before <= pairGain*alone
}
