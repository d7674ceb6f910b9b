package model_test

import (
	"testing"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

func TestValuesOfParameters(t *testing.T) {
	s := open(t)
	d, design := s.Document(), s.Cars().Design
	mm := model.NumbersOf(d)
	inches := model.Numbers{Style: number.Style{Units: study.Inch, Fraction: 32}}
	tests := []struct {
		name, key string
		numbers   model.Numbers
		value     float64
		want      string
	}{
		{"a change has its sign", "tieRodOuterHeight", mm, 3.5, "+3.50 mm"},
		{"downward", "tieRodOuterHeight", mm, -3.5, "−3.50 mm"},
		{"no change", "tieRodOuterHeight", mm, 0, "0.00 mm"},
		{"a setting has none", "caster", mm, 4.5, "4.500 deg"},
		{"in inches", "steeringArmLength", inches, 12.7, "+0.500 in (1/2)"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p, _, err := solver.FindParameter(design, tt.key)
			if err != nil {
				t.Fatal(err)
			}
			if got := tt.numbers.Value(d, p, tt.value); got != tt.want {
				t.Errorf("Value(%s, %g) = %q, want %q", tt.key, tt.value, got, tt.want)
			}
			back, err := tt.numbers.ParseValue(d, p, tt.numbers.ValueNumber(d, p, tt.value))
			if err != nil || back != tt.value { // exact: each value is short in its unit
				t.Errorf("ParseValue = %g, %v, want %g", back, err, tt.value)
			}
		})
	}
}

// TestChangeThatNobodySeesHasNoSign: what is written as zero has none.
func TestChangeThatNobodySeesHasNoSign(t *testing.T) {
	s := open(t)
	p, _, err := solver.FindParameter(s.Cars().Design, "tieRodOuterHeight")
	if err != nil {
		t.Fatal(err)
	}
	if got := model.NumbersOf(s.Document()).Value(s.Document(), p, 1e-7); got != "0.00 mm" {
		t.Errorf("Value = %q, want 0.00 mm", got)
	}
}

func TestFindParameters(t *testing.T) {
	design := open(t).Cars().Design
	for _, text := range []string{"outer height", "HEIGHT  tie outer", "tieRodOuterHeight"} {
		if got := model.FindParameters(design, text); len(got) != 1 || got[0].Key != "tieRodOuterHeight" {
			t.Errorf("FindParameters(%q) = %v, want tieRodOuterHeight alone", text, got)
		}
	}
	if got, want := len(model.FindParameters(design, "")), len(solver.Parameters(design)); got != want {
		t.Errorf("no words find %d parameters, want all %d", got, want)
	}
}
