package plot

import "testing"

func TestAppendRod(t *testing.T) {
	tests := []struct {
		name string
		a, b Point
		want string
	}{
		{"level", Point{0, 0}, Point{100, 0},
			"M4 3L96 3M4 -3L96 -3M-5 0A5 5 0 0 1 5 0A5 5 0 0 1 -5 0ZM95 0A5 5 0 0 1 105 0A5 5 0 0 1 95 0Z"},
		{"hidden by its balls", Point{0, 0}, Point{7, 0},
			"M-5 0A5 5 0 0 1 5 0A5 5 0 0 1 -5 0ZM2 0A5 5 0 0 1 12 0A5 5 0 0 1 2 0Z"},
		{"gap", Point{0, nan}, Point{7, 0}, ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := AppendRod(nil, tt.a, tt.b, 6, 5).String(); got != tt.want {
				t.Errorf("AppendRod = %q, want %q", got, tt.want)
			}
		})
	}
}

func TestAppendArm(t *testing.T) {
	joint := Point{100, 0}
	tests := []struct {
		name         string
		joint        Point
		pivots       []Point
		bars, circle int
	}{
		{"wishbone", joint, []Point{{0, 50}, {0, -50}}, 2, 1},
		{"one leg unknown", joint, []Point{{0, 50}, {nan, 0}}, 1, 1},
		{"joint unknown", Point{nan, nan}, []Point{{0, 50}}, 0, 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := AppendArm(nil, tt.joint, 6, 5, tt.pivots...)
			if lines, circles := count(p, 'L'), count(p, 'Z'); lines != 2*tt.bars || circles != tt.circle {
				t.Errorf("%d lines and %d circles, want %d and %d", lines, circles, 2*tt.bars, tt.circle)
			}
		})
	}
}

func TestAppendStrut(t *testing.T) {
	got := AppendStrut(nil, Point{0, 0}, Point{100, 0}, 10).String()
	want := "M0 5L55 5L55 -5L0 -5Z" + "M55 2L100 2M55 -2L100 -2" + "M100 9L100 -9"
	if got != want {
		t.Errorf("AppendStrut = %q, want %q", got, want)
	}
	if got := AppendStrut(nil, Point{nan, 0}, Point{}, 10); len(got) != 0 {
		t.Errorf("AppendStrut at a gap = %q", got)
	}
}
