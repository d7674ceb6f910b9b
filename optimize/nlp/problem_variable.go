package nlp

import "math"

// Variable is one unknown of a search and the range in which it is sought.
type Variable struct {
	Name     string  // for messages
	Min, Max float64 // in the variable's own unit; finite, Min < Max
}

// valid reports whether the range is finite and not empty.
func (v Variable) valid() bool {
	return v.Min < v.Max && !math.IsInf(v.Min, 0) && !math.IsInf(v.Max, 0) && !math.IsInf(v.Max-v.Min, 0)
}

// FromUnit returns the value at u, where 0 stands for Min and 1 for Max. It
// returns exactly Min and Max there.
func (v Variable) FromUnit(u float64) float64 {
	if u >= 1 {
		return v.Max
	}
	return v.Min + u*(v.Max-v.Min)
}

// ToUnit returns where x lies in the range, from 0 at Min to 1 at Max. Values
// beyond the range, and NaN, go to the nearer end and the middle.
func (v Variable) ToUnit(x float64) float64 {
	if math.IsNaN(x) {
		return 0.5
	}
	return clamp((x-v.Min)/(v.Max-v.Min), 0, 1)
}

// Bound says whether a variable ended inside its range or at an end of it.
type Bound int8

// Where a variable may end.
const (
	AtMin  Bound = -1
	Inside Bound = 0
	AtMax  Bound = 1
)

// String returns "at minimum", "inside" or "at maximum".
func (b Bound) String() string {
	switch b {
	case AtMin:
		return "at minimum"
	case AtMax:
		return "at maximum"
	case Inside:
		return "inside"
	}
	return "unknown bound"
}

// boundAt returns the bound on which u of the unit range lies exactly.
func boundAt(u float64) Bound {
	switch {
	case u <= 0:
		return AtMin
	case u >= 1:
		return AtMax
	}
	return Inside
}

func clamp(x, lo, hi float64) float64 { return math.Min(math.Max(x, lo), hi) }
