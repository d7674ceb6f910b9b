package report

import (
	"math"
	"slices"
	"testing"

	"toewright/internal/study"
)

func TestTravelsOfTheTable(t *testing.T) {
	tests := []struct {
		name             string
		units, shown     study.Units
		bump, droop      float64
		count            int
		first, last, gap float64 // in the study's units
	}{
		{"usual", study.Millimetre, "", 60, 60, 13, -60, 60, 10},
		{"ends between rows", study.Millimetre, "", 45, 32, 10, -32, 45, 10},
		{"short", study.Millimetre, "", 15, 15, 7, -15, 15, 5},
		{"long", study.Millimetre, "", 150, 150, 17, -150, 150, 20},
		{"bump only", study.Millimetre, "", 80, 0, 9, 0, 80, 10},
		{"nowhere", study.Millimetre, "", 0, 0, 1, 0, 0, 10},
		{"inches", study.Inch, "", 2, 2.5, 10, -2.5, 2, 0.5},
		{"inches of a study in mm", study.Millimetre, study.Inch, 60, 60, 11, -60, 60, 12.7},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d := &study.Document{Units: tt.units, Travel: &study.Travel{Bump: tt.bump, Droop: tt.droop, Step: 3}}
			if tt.shown != "" {
				d.Display = &study.Display{Units: tt.shown}
			}
			got := travelsOf(tableStudy(d))
			if len(got) != tt.count || got[0] != tt.first || got[len(got)-1] != tt.last {
				t.Fatalf("travels %v, want %d from %g to %g", got, tt.count, tt.first, tt.last)
			}
			const rounding = 1e-9 // an inch of a study in mm is not a whole number of them
			if zero := slices.Index(got, 0); len(got) > 1 && math.Abs(got[zero+1]-tt.gap) > rounding {
				t.Errorf("travels %v, want steps of %g", got, tt.gap)
			}
			if d.Travel.Step != 3 {
				t.Errorf("the study's step became %g", d.Travel.Step)
			}
		})
	}
}
