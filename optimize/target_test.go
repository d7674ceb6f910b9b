package optimize_test

import (
	"math"
	"strings"
	"testing"

	"toewright/optimize"
	"toewright/solver"
)

func TestTargetAt(t *testing.T) {
	three := optimize.Target{Travel: []float64{-30, 10, 20}, Change: []solver.Angle{0.3, -0.1, 0.2}}
	tests := []struct {
		name   string
		target optimize.Target
		travel float64
		want   solver.Angle
	}{
		{"flat", optimize.Target{}, 7, 0},
		{"below", three, -50, 0.3},
		{"first", three, -30, 0.3},
		{"in the first piece", three, -20, 0.2},
		{"static height", three, 0, 0},
		{"between", three, 10, -0.1},
		{"in the last piece", three, 15, 0.05},
		{"last", three, 20, 0.2},
		{"above", three, 80, 0.2},
		{"one point", optimize.Target{Travel: []float64{5}, Change: []solver.Angle{0.4}}, -5, 0.4},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := tt.target.At(tt.travel); !(math.Abs(float64(got-tt.want)) <= 1e-15) {
				t.Errorf("At(%g) = %g, want %g", tt.travel, got, tt.want)
			}
		})
	}
}

func TestTargetCheck(t *testing.T) {
	nan := math.NaN()
	tests := []struct {
		name   string
		target optimize.Target
		want   string // a part of the error, none if empty
	}{
		{"flat", optimize.Target{}, ""},
		{"two points", optimize.Target{Travel: []float64{-1, 1}, Change: []solver.Angle{0, 0}}, ""},
		{"a change short", optimize.Target{Travel: []float64{-1, 1}, Change: []solver.Angle{0}}, "2 travels and 1 changes"},
		{"a travel that is not a number", optimize.Target{Travel: []float64{-1, nan}, Change: []solver.Angle{0, 0}}, "point 2 is not a number"},
		{"a change that is not a number", optimize.Target{Travel: []float64{-1, 1}, Change: []solver.Angle{solver.Angle(nan), 0}}, "point 1 is not a number"},
		{"a travel twice", optimize.Target{Travel: []float64{4, 4}, Change: []solver.Angle{0, 0}}, "4 mm follows 4 mm"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			err := tt.target.Check()
			if (err == nil) != (tt.want == "") || err != nil && !strings.Contains(err.Error(), tt.want) {
				t.Errorf("Check = %v, want %q in it", err, tt.want)
			}
		})
	}
}
