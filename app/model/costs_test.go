package model_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// TestCostsOfTwoCars holds the estimates against what they are made of: scrub is a kilometre times
// the sine of the static toe (a tyre that rolls straight ahead at an angle), and one wheel's
// bump steers the axle by the mean of both toes' slopes.
func TestCostsOfTwoCars(t *testing.T) {
	for _, units := range []study.Units{study.Millimetre, study.Inch} {
		for _, template := range study.Templates() {
			desk := model.NewDesk(template.Document())
			if err := desk.Session.SetDisplay("units", func(v *study.Display) { v.Units, v.Toe = units, "degrees" }); err != nil {
				t.Fatal(err)
			}
			cars := desk.Session.Cars()
			before, after := cars.Base(), cars.List[len(cars.List)-1]
			list, err := desk.Costs(before, after)
			if err != nil {
				t.Fatal(err)
			}
			if len(list) < 2 {
				t.Fatalf("%s: %+v, want scrub and steer at least", template.Key, list)
			}
			toe := 0.0
			for _, side := range solver.Sides {
				toe = max(toe, math.Abs(before.Rest(side).Toe.Radians()))
			}
			if want := number.Decimal(1000*math.Sin(toe), 3); list[0].Before != want {
				t.Errorf("%s: scrub %s m/km, want %s", template.Key, list[0].Before, want)
			}
			slope := 0.0
			for _, side := range solver.Sides { // the other wheel of a solid axle moves too
				slope = max(slope, math.Abs(before.Rest(side).Instant.ToeRate)/2)
			}
			if !before.Axle.Solid() {
				want := model.NumbersOf(desk.Session.Document()).Slope(slope * 180 / math.Pi)
				for _, k := range list {
					if strings.HasPrefix(k.Label, "Steer") && k.Before != want {
						t.Errorf("%s, %s: steer %s, want %s", template.Key, units, k.Before, want)
					}
				}
			}
			for _, k := range list {
				checkSaving(t, template.Key, k)
			}
		}
	}
}

// checkSaving holds the words of a saving against its two figures.
func checkSaving(t *testing.T, name string, k model.Cost) {
	t.Helper()
	a, _ := strconv.ParseFloat(k.Before, 64)
	b, _ := strconv.ParseFloat(k.After, 64)
	word, text, _ := strings.Cut(k.Saves, " ")
	by, _ := strconv.ParseFloat(text, 64)
	decimals := len(k.Before) - strings.LastIndexByte(k.Before, '.') - 1
	switch {
	case k.Before == k.After:
		if k.Saves != "the same" {
			t.Errorf("%s: %+v", name, k)
		}
	case word != map[bool]string{true: "saves", false: "costs"}[a > b], math.Abs(by-math.Abs(a-b)) > 1.01*math.Pow10(-decimals) && strings.Contains(k.Before, "."):
		t.Errorf("%s: %+v", name, k)
	}
}
