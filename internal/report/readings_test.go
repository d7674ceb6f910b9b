package report

import (
	"strings"
	"testing"
)

// TestReadingsAfterFitting: readings that were taken once the part was on are passed,
// or the sheet says which are not and where.
func TestReadingsAfterFitting(t *testing.T) {
	tests := []struct {
		name string
		off  float64 // added to one reading, mm
		want string
	}{
		{"as predicted", 0, "Readings after fitting, set 3, left: passed."},
		{"one far off", 5, "Readings after fitting, set 3, left: NOT PASSED: at travel −60 mm it is "},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d := car(t, "double-wishbone-rack")
			d.Readings[2].Purpose = "verify"
			d.Readings[2].Values[0][1] += tt.off
			if page := seen(written(t, gathered(t, d, Options{}))); !strings.Contains(page, tt.want) {
				t.Errorf("the page has no %q", tt.want)
			}
		})
	}
}
