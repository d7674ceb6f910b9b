package number

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestUnits(t *testing.T) {
	tests := []struct {
		name     string
		x        float64
		from, to Units
		want     float64
	}{
		{"inch is exact", 1, Inch, Millimetre, 25.4},
		{"and back", 25.4, Millimetre, Inch, 1},
		{"same units", 0.1, Inch, Inch, 0.1},
		{"a decimal stays one", 3.5, Inch, Millimetre, 88.9},
		{"sign", -2, Inch, Millimetre, -50.8},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := tt.from.Convert(tt.x, tt.to); got != tt.want {
				t.Errorf("%s.Convert(%v, %s) = %v, want %v", tt.from, tt.x, tt.to, got, tt.want)
			}
		})
	}
}

// roundTrip is the largest relative error of two multiplications and two
// divisions: half a unit in the last place each.
const roundTrip = 4 * 0x1p-53

func TestUnitsRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(-1e5, 1e5).Draw(t, "x")
		back := Inch.FromMillimetres(Inch.Millimetres(x))
		if !(math.Abs(back-x) <= roundTrip*math.Abs(x)) {
			t.Fatalf("%v in comes back as %v in", x, back)
		}
	})
}
