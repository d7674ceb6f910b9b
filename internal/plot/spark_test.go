package plot

import "testing"

func TestAppendSpark(t *testing.T) {
	c := Curve{X: []float64{-1, 1}, Y: []float64{-40, 40}}
	tests := []struct {
		name       string
		along      Axis
		x, y       Domain
		line, zero string
	}{
		{"upright", Vertical, Domain{-1, 1}, Domain{-40, 40}, "M0 80C6.67 53.33 13.33 26.67 20 0", "M10 0L10 80"},
		{"sideways", Horizontal, Domain{-1, 1}, Domain{-40, 40}, "M0 80C6.67 53.33 13.33 26.67 20 0", "M0 40L20 40"},
		{"zero outside", Vertical, Domain{-3, -1}, Domain{-40, 40}, "M20 80L20 80", ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			line, zero := AppendSpark(nil, nil, Box(0, 0, 20, 80), tt.along, c, tt.x, tt.y)
			if line.String() != tt.line || zero.String() != tt.zero {
				t.Errorf("line %q, zero %q, want %q, %q", line, zero, tt.line, tt.zero)
			}
		})
	}
}
