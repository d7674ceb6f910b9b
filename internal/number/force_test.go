package number_test

import (
	"math"
	"testing"

	"toewright/internal/number"
)

// TestMechanical: factors of NIST Special Publication 811 (2008), appendix B.8, to seven
// digits: 1 lbf is 4.448222 N, 1 lbf ft 1.355818 N m, 1 psi 6894.757 Pa.
func TestMechanical(t *testing.T) {
	mm, inch := number.Style{}, number.Style{Units: number.Inch}
	for _, tt := range []struct {
		q            *number.Mechanical
		x            float64
		mm, in, unit string
	}{
		{&number.Force, 4448.222, "4448.2", "4448.2 (1000.0)", "N (lbf)"},
		{&number.Force, -4448.222, "−4448.2", "−4448.2 (−1000.0)", "N (lbf)"},
		{&number.Force, 0, "0.0", "0.0 (0.0)", "N (lbf)"},
		{&number.Moment, 1355.818, "1355.82", "1355.82 (1000.00)", "N m (lbf ft)"},
		{&number.Stress, 68.94757, "68.9", "68.9 (10000)", "MPa (psi)"},
		{&number.Stress, math.NaN(), "–", "–", "MPa (psi)"},
	} {
		if got := tt.q.Number(mm, tt.x); got != tt.mm {
			t.Errorf("%g is %q, want %q", tt.x, got, tt.mm)
		}
		if got := tt.q.Number(inch, tt.x); got != tt.in {
			t.Errorf("%g beside inches is %q, want %q", tt.x, got, tt.in)
		}
		if got := tt.q.Unit(inch); got != tt.unit {
			t.Errorf("unit %q, want %q", got, tt.unit)
		}
	}
}
