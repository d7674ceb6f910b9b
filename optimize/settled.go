package optimize

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"gonum.org/v1/gonum/mat"
)

// Direction is a combination of the unknowns: how much of what was unknown of it
// before the readings is left.
type Direction struct {
	// Left is the standard deviation after the readings over that before: near 0
	// is settled, 1 is as unknown as ever.
	Left float64
	// Weights are those of the unknowns, each in units of its own standard
	// deviation before; the sum of their squares is 1.
	Weights []float64
}

// Directions returns independent combinations of the unknowns, the best settled
// first. No more of them are settled than there are readings.
func (f *FittedCar) Directions() []Direction {
	e := eigenOf(f.share())
	var out []Direction
	for k, v := range e.values {
		out = append(out, Direction{Left: math.Sqrt(math.Max(v, 0)), Weights: e.vector(k)})
	}
	return out
}

// share returns the covariance in units of what was known before.
func (f *FittedCar) share() *mat.SymDense {
	n := len(f.Unknowns)
	out := mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			out.SetSym(i, j, f.Covariance.At(i, j)/(f.Unknowns[i].SD*f.Unknowns[j].SD))
		}
	}
	return out
}

// Leading returns the unknowns that make up a share of the direction, such as
// 0.9, the heaviest first.
func (d *Direction) Leading(share float64) []int {
	order := make([]int, len(d.Weights))
	for i := range order {
		order[i] = i
	}
	weight := func(i int) float64 { return d.Weights[i] * d.Weights[i] }
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(weight(b), weight(a)) })
	sum := 0.0
	for i, k := range order {
		if sum += weight(k); sum >= share {
			return order[:i+1]
		}
	}
	return order
}

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
