package number_test

import (
	"math"
	"strings"
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

// TestMechanicalAmounts: a limit on a force is written as the force is, in tables and in
// sentences.
func TestMechanicalAmounts(t *testing.T) {
	for unit, want := range map[string][3]string{
		"N":   {"1000.0 (224.8)", "N (lbf)", "1000.0 N (224.8 lbf)"},
		"N m": {"1000.00 (737.56)", "N m (lbf ft)", "1000.00 N m (737.56 lbf ft)"},
		"MPa": {"1000.0 (145038)", "MPa (psi)", "1000.0 MPa (145038 psi)"},
	} {
		s := number.Style{Units: number.Inch}
		if got := [3]string{s.Amount(1000, unit, number.Inch), s.AmountUnit(unit), s.AmountText(1000, unit, number.Inch)}; got != want {
			t.Errorf("%s: %q, want %q", unit, got, want)
		}
		mm := number.Style{}
		if got := mm.AmountText(1000, unit, number.Inch); !strings.HasSuffix(got, " "+unit) || strings.Contains(got, "(") {
			t.Errorf("in mm %q", got)
		}
	}
}
