package number_test

import (
	"fmt"
	"math"

	"toewright/internal/number"
)

// A tenth of a degree on a plate of 15 in.
func ExampleOverPlate() {
	fmt.Printf("%.3f mm\n", number.OverPlate(0.1*math.Pi/180, 15*25.4))
	// Output: 0.665 mm
}

// Lengths as a workshop reads them that works in thirty-seconds.
func ExampleStyle_Length() {
	s := number.Style{Units: number.Inch, Fraction: 32}
	for _, inches := range []float64{0.265625, 0.275, 0.010} {
		fmt.Println(s.Length(number.Inch.Millimetres(inches)))
	}
	// Output:
	// 0.266 in (17/64)
	// 0.275 in (9/32 less 0.006)
	// 0.010 in
}

// A toe of 0.1 deg as two indicators 15 in apart read it.
func ExampleStyle_Toe() {
	s := number.Style{Units: number.Inch, Gauge: number.Indicators, Base: 381}
	fmt.Println(s.Toe(0.1), s.ToeUnit())
	// Output: 0.0262 in over 15 in, indicators
}
