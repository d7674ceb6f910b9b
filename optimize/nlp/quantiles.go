package nlp

import (
	"math"
	"slices"
)

// Quantiles returns the values below which the given shares of xs lie, linear
// between neighbours; it leaves xs alone. They are NaN for an empty xs.
func Quantiles(xs []float64, shares ...float64) []float64 {
	out := make([]float64, len(shares))
	sorted := slices.Clone(xs)
	slices.Sort(sorted)
	for i, p := range shares {
		out[i] = Quantile(sorted, p)
	}
	return out
}

// Quantile returns the quantile of a sorted list.
func Quantile(sorted []float64, share float64) float64 {
	if len(sorted) == 0 {
		return math.NaN()
	}
	at := share * float64(len(sorted)-1)
	lo := min(int(at), len(sorted)-1)
	hi := min(lo+1, len(sorted)-1)
	part := at - float64(lo)
	if part == 0 || sorted[lo] == sorted[hi] {
		return sorted[lo] // which may be infinite
	}
	return sorted[lo] + part*(sorted[hi]-sorted[lo])
}
