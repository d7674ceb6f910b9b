package plot

import "sort"

// Interpolate returns the value at x on the straight lines through (at[i],
// values[i]), the read-out under a pointer; at must grow or fall throughout. ok is
// false where x lies beyond the ends or between values of which one is a gap.
func Interpolate(at, values []float64, x float64) (value float64, ok bool) {
	n := min(len(at), len(values))
	if n == 0 {
		return 0, false
	}
	falling := at[0] > at[n-1]
	i := sort.Search(n, func(i int) bool { return at[i] >= x != falling || at[i] == x })
	if i == n {
		return 0, false
	}
	if at[i] == x {
		return values[i], finite(values[i])
	}
	if i == 0 {
		return 0, false
	}
	value = mix(values[i-1], values[i], (x-at[i-1])/(at[i]-at[i-1]))
	return value, finite(value)
}
