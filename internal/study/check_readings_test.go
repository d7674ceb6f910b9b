package study

import (
	"math"
	"testing"
)

// smoothRun returns readings of a curve with a slope, a bend and an S-shape, and
// 0.03 mm of scatter from row to row.
func smoothRun() Reading {
	r := Reading{Side: Left, Base: 300, Repeatability: 0.05}
	for i := -5; i <= 5; i++ {
		z := float64(10 * i)
		scatter := 0.03 * math.Sin(float64(7*i))
		r.Values = append(r.Values, [2]float64{z, math.Round(100*(1.2-0.06*z+0.0004*z*z+scatter)) / 100})
	}
	return r
}

func TestCheckReadingsFindsNothing(t *testing.T) {
	few := Reading{Base: 300, Values: [][2]float64{{-50, 0}, {0, 5}, {50, 0}, {60, 9}}}
	for name, r := range map[string]Reading{"smooth run": smoothRun(), "too few to tell": few, "none": {Base: 300}} {
		d := &Document{Readings: []Reading{r}}
		if got := checkReadings(d); len(got) > 0 {
			t.Errorf("checkReadings(%s) = %s, want no findings", name, list(got))
		}
	}
}

// TestCheckReadingsOfTheFewest finds a slip in five readings of a straight line.
func TestCheckReadingsOfTheFewest(t *testing.T) {
	r := Reading{Base: 300, Values: [][2]float64{{-20, 1}, {-10, 20}, {0, 3}, {10, 4}, {20, 5}}}
	want := Finding{"readings.0.values.1", Warning, "the reading 20 at travel -10 jumps off the line of its neighbours", "is a digit too many? Then it would be 2"}
	if got := checkReadings(&Document{Readings: []Reading{r}}); !contains(got, want) {
		t.Errorf("checkReadings lacks\n%+v\ngot\n%s", want, list(got))
	}
}

func TestCheckReadings(t *testing.T) {
	tests := []struct {
		name string
		row  int
		slip [2]float64
		want Finding
	}{
		{
			"digit too many", 3, [2]float64{-20, 25.3},
			Finding{"readings.0.values.3", Warning, "the reading 25.3 at travel -20 jumps off the line of its neighbours", "is a digit too many? Then it would be 2.53"},
		},
		{
			"point too early", 1, [2]float64{-40, 0.423},
			Finding{"readings.0.values.1", Warning, "the reading 0.423 at travel -40 jumps off the line of its neighbours", "is a decimal point too early? Then it would be 4.23"},
		},
		{
			"sign reversed", 2, [2]float64{-30, -3.33},
			Finding{"readings.0.values.2", Warning, "the reading -3.33 at travel -30 jumps off the line of its neighbours", "is the sign reversed? Then it would be 3.33"},
		},
		{
			"inches among millimetres", 2, [2]float64{-30, 0.1315},
			Finding{"readings.0.values.2", Warning, "the reading 0.1315 at travel -30 jumps off the line of its neighbours", "was it read in inches? Then it would be 3.34"},
		},
		{
			"no slip that explains it", 5, [2]float64{0, 2.3},
			Finding{"readings.0.values.5", Warning, "the reading 2.3 at travel 0 jumps off the line of its neighbours", "read it again"},
		},
		{
			"travel twice", 4, [2]float64{-20, 2.5},
			Finding{"readings.0.values.4", Warning, "travel -20 stands in row 4 already", "correct the travel, or give a second run an entry of its own"},
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := smoothRun()
			r.Values[tt.row] = tt.slip
			if got := checkReadings(&Document{Readings: []Reading{r}}); !contains(got, tt.want) {
				t.Errorf("checkReadings lacks\n%+v\ngot\n%s", tt.want, list(got))
			}
		})
	}
}
