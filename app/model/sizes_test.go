package model_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// sizesOf returns how a study in the units reads sizes of a parameter.
func sizesOf(t *testing.T, key string, units study.Units, shown model.Numbers) (parse func(string) ([]float64, error), write func([]float64) string) {
	t.Helper()
	s := open(t)
	p, _, err := solver.FindParameter(s.Cars().Design, key)
	if err != nil {
		t.Fatal(err)
	}
	d := &study.Document{Units: units}
	v := &study.Variable{Parameter: key, Min: -100, Max: 100}
	return func(text string) ([]float64, error) { return shown.ParseSizes(d, p, v, text) },
		func(sizes []float64) string { return shown.SizesText(d, p, sizes) }
}

func TestSizes(t *testing.T) {
	mm := model.Numbers{Style: number.Style{Units: study.Millimetre}}
	inch := model.Numbers{Style: number.Style{Units: study.Inch}}
	fraction := model.Numbers{Style: number.Style{Units: study.Inch, Fraction: 32}}
	tests := []struct {
		name  string
		units study.Units
		shown model.Numbers
		text  string
		want  []float64
		again string // as it stands in the field afterwards
	}{
		{"blanks", study.Millimetre, mm, "1 2.5  -3", []float64{1, 2.5, -3}, "1, 2.5, −3"},
		{"commas", study.Millimetre, mm, "1, 2.5,−3", []float64{1, 2.5, -3}, "1, 2.5, −3"},
		{"commas without blanks", study.Millimetre, mm, "1,2,3", []float64{1, 2, 3}, "1, 2, 3"},
		{"decimal commas", study.Millimetre, mm, "1,5 2,25", []float64{1.5, 2.25}, "1.5, 2.25"},
		{"decimal commas and commas", study.Millimetre, mm, "1,5, 2,25", []float64{1.5, 2.25}, "1.5, 2.25"},
		{"commas after points", study.Millimetre, mm, "1.5,2.5", []float64{1.5, 2.5}, "1.5, 2.5"},
		{"a decimal comma and a unit", study.Millimetre, mm, "1,5mm 2", []float64{1.5, 2}, "1.5, 2"},
		{"commas after fractions", study.Inch, fraction, "1/2,3/4", []float64{0.5, 0.75}, "1/2, 3/4"},
		{"semicolons", study.Millimetre, mm, "1,5;2", []float64{1.5, 2}, "1.5, 2"},
		{"loose commas", study.Millimetre, mm, " , 1 ,, 2 ,", []float64{1, 2}, "1, 2"},
		{"units", study.Millimetre, mm, "1 mm 1/2 in, 2cm", []float64{1, 12.7, 20}, "1, 12.7, 20"},
		{"fractions", study.Inch, fraction, "1/2 1 1/4 3", []float64{0.5, 1.25, 3}, "1/2, 1 1/4, 3"},
		{"whole numbers and fractions apart", study.Inch, fraction, "1, 1/2", []float64{1, 0.5}, "1, 1/2"},
		{"a fraction with a sign", study.Inch, fraction, "1 -1/2", []float64{1, -0.5}, "1, −1/2"},
		{"no fraction of a fraction", study.Inch, fraction, "1/2 1/4", []float64{0.5, 0.25}, "1/2, 1/4"},
		{"fractions of keyboards", study.Inch, fraction, "½ 1 ¾", []float64{0.5, 1.75}, "1/2, 1 3/4"},
		{"drills to a 64th", study.Inch, fraction, "11/64 0.201", []float64{11.0 / 64, 0.201}, "11/64, 0.201"},
		{"decimals in inches", study.Inch, inch, "1/64", []float64{1.0 / 64}, "0.015625"},
		{"inches in a file of mm", study.Millimetre, fraction, "1/32", []float64{25.4 / 32}, "1/32"},
		{"mm in a file of inches", study.Inch, mm, "12.7", []float64{0.5}, "12.7"},
		{"none", study.Millimetre, mm, "  ", nil, ""},
	}
	const tolerance = 1e-12 // a few roundings of one conversion
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			parse, write := sizesOf(t, "tieRodOuterHeight", tt.units, tt.shown)
			near := func(a, b float64) bool { return math.Abs(a-b) < tolerance }
			got, err := parse(tt.text)
			if err != nil || !slices.EqualFunc(got, tt.want, near) {
				t.Fatalf("ParseSizes(%q) = %v, %v, want %v %s", tt.text, got, err, tt.want, tt.units)
			}
			if text := write(got); text != tt.again {
				t.Errorf("SizesText = %q, want %q", text, tt.again)
			}
			if back, err := parse(write(got)); err != nil || !slices.EqualFunc(back, tt.want, near) {
				t.Errorf("what is written reads as %v, %v, want %v", back, err, tt.want)
			}
		})
	}
}

func TestSizesOfAnAngle(t *testing.T) {
	parse, write := sizesOf(t, "caster", study.Inch, model.Numbers{Style: number.Style{Units: study.Inch, Fraction: 32}})
	got, err := parse("2.5° 3 deg, 4")
	if err != nil || !slices.Equal(got, []float64{2.5, 3, 4}) || write(got) != "2.5, 3, 4" {
		t.Errorf("got %v, %v, written %q, want 2.5, 3, 4 deg", got, err, write(got))
	}
}

func TestSizesRefused(t *testing.T) {
	parse, _ := sizesOf(t, "tieRodOuterHeight", study.Millimetre, model.Numbers{Style: number.Style{Units: study.Millimetre}})
	for text, want := range map[string]string{
		"1 x 3":   `"1 x" is not a length`,
		"1 2 1/0": `"2 1/0" is not a length`,
		"mm":      `"mm" is not a length`,
		"10,20":   `"10,20" may be one size or two: write 10.20 or 10, 20`,
		"200 300": "no size lies within the bounds, −100.00 to 100.00 mm",
	} {
		if got, err := parse(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("ParseSizes(%q) = %v, %v, want an error that says %s", text, got, err, want)
		}
	}
}

// TestSizesAndStepExclude states one in place of the other, as the file asks for.
func TestSizesAndStepExclude(t *testing.T) {
	s := open(t)
	const key = "tieRodInnerHeight"
	if err := s.Free(key); err != nil {
		t.Fatal(err)
	}
	variable := func() study.Variable { f := s.Document().Search.Variables; return f[len(f)-1] }
	must := func(err error) {
		t.Helper()
		if err == nil {
			err = s.Document().ReadyToSearch()
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	must(s.SetGrid(key, 0.5))
	must(s.SetSizes(key, []float64{1, 2}))
	if v := variable(); v.Grid != 0 || !slices.Equal(v.Sizes, []float64{1, 2}) {
		t.Errorf("step %g, sizes %v, want no step and two sizes", v.Grid, v.Sizes)
	}
	must(s.SetGrid(key, 0.25))
	if v := variable(); v.Grid != 0.25 || v.Sizes != nil {
		t.Errorf("step %g, sizes %v, want a step alone", v.Grid, v.Sizes)
	}
	must(s.SetSizes(key, nil))
	if v := variable(); v.Grid != 0.25 {
		t.Errorf("taking no sizes away takes the step away")
	}
}
