package study

import (
	"strings"
	"testing"
)

// TestStiffnessIsOfTheCar: what does not give on the car, and what is no stiffness, is
// refused by name; what is soft beyond rubber is noticed.
func TestStiffnessIsOfTheCar(t *testing.T) {
	for key, want := range map[string]struct {
		k    float64
		text string
	}{
		"rods.0":          {8000, "stiffness.rods.0: rods.0 does not give on this car, want one of lowerFrontPivot, "},
		"strutTop":        {8000, "stiffness.strutTop: strutTop does not give on this car"},
		"lowerFrontPivot": {0, "stiffness.lowerFrontPivot: is 0 N/mm, want more than 0"},
		"tieRod":          {-3, "stiffness.tieRod: is -3 N/mm, want more than 0"},
	} {
		d := Template{Key: "double-wishbone-rack"}.Document()
		d.Stiffness = Stiffness{key: want.k}
		text, err := Encode(d)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := Decode(text); err == nil || !strings.Contains(err.Error(), want.text) {
			t.Errorf("%s: error %v, want %q", key, err, want.text)
		}
	}
	d := Template{Key: "double-wishbone-rack"}.Document()
	d.Stiffness = Stiffness{"tieRod": 8}
	soft := ""
	for _, f := range Check(d) {
		if f.Path == "stiffness.tieRod" {
			soft = f.Message + "; " + f.Suggestion
		}
	}
	if !strings.Contains(soft, "8 N/mm is soft") || !strings.Contains(soft, "kN/mm") {
		t.Errorf("of 8 N/mm: %q", soft)
	}
}
