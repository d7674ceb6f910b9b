package model_test

import (
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/internal/study"
)

// TestIn names the unit of every figure in every way to show numbers.
func TestIn(t *testing.T) {
	for _, units := range []study.Units{study.Millimetre, study.Inch} {
		for _, gauge := range []number.Gauge{number.Degrees, number.Indicators, number.Plate} {
			n := model.Numbers{Style: number.Style{Units: units, Gauge: gauge, Base: 381}}
			for _, unit := range []string{n.LengthUnit(), n.ToeUnit(), n.SlopeUnit()} {
				got := model.In(unit)
				if strings.Contains(got, "in in") && !strings.Contains(got, "in inches") || !strings.HasPrefix(got, "in ") {
					t.Errorf("%q is written %q", unit, got)
				}
			}
		}
	}
	for unit, want := range map[string]string{"deg": "in deg", "in": "in inches", "in over 15 in, plate": "in inches over 15 in, plate", "mm over 381 mm": "in mm over 381 mm"} {
		if got := model.In(unit); got != want {
			t.Errorf("%q is written %q, want %q", unit, got, want)
		}
	}
}
