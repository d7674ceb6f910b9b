package engine

import (
	"math"
	"strconv"
)

// Number is a figure that a car may not have, such as the caster of a linkage
// whose steering axis lies level: NaN stands for that, null in JSON.
type Number float64

// longestNumber is the most letters that a number takes, as -1.2345678901234567e-300.
const longestNumber = 24

// MarshalJSON writes the number, or null where there is none.
func (n Number) MarshalJSON() ([]byte, error) {
	if x := float64(n); math.IsNaN(x) || math.IsInf(x, 0) {
		return []byte("null"), nil
	}
	return strconv.AppendFloat(make([]byte, 0, longestNumber), float64(n), 'g', -1, 64), nil
}

// UnmarshalJSON reads a number, or null as NaN.
func (n *Number) UnmarshalJSON(data []byte) error {
	if string(data) == "null" {
		*n = none
		return nil
	}
	x, err := strconv.ParseFloat(string(data), 64)
	*n = Number(x)
	return err
}

// none stands for a figure that there is not.
var none = Number(math.NaN())

// Valid reports whether there is such a figure.
func (n Number) Valid() bool { return !math.IsNaN(float64(n)) && !math.IsInf(float64(n), 0) }

// or returns the number, or another where there is none.
func (n Number) or(other float64) float64 {
	if n.Valid() {
		return float64(n)
	}
	return other
}
