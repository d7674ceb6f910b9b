package plot

import "testing"

func TestRect(t *testing.T) {
	r := Box(10, 20, 30, 40)
	if r.Width() != 30 || r.Height() != 40 || r.Centre() != (Point{25, 40}) {
		t.Errorf("%v: width %v, height %v, centre %v", r, r.Width(), r.Height(), r.Centre())
	}
	if got, want := r.Inset(1, 2, 3, 4), (Rect{Point{11, 22}, Point{37, 56}}); got != want {
		t.Errorf("Inset(1, 2, 3, 4) = %v, want %v", got, want)
	}
}

func TestRectContains(t *testing.T) {
	r := Box(0, 0, 10, 10)
	tests := []struct {
		name string
		p    Point
		want bool
	}{
		{"inside", Point{5, 5}, true},
		{"corner", Point{10, 0}, true},
		{"left", Point{-1, 5}, false},
		{"right", Point{11, 5}, false},
		{"above", Point{5, -1}, false},
		{"below", Point{5, 11}, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := r.Contains(tt.p); got != tt.want {
				t.Errorf("Contains(%v) = %v, want %v", tt.p, got, tt.want)
			}
			if got := r.nearest(tt.p) == tt.p; got != tt.want {
				t.Errorf("nearest(%v) = %v", tt.p, r.nearest(tt.p))
			}
		})
	}
}

func TestRectOverlaps(t *testing.T) {
	r := Box(0, 0, 10, 10)
	tests := []struct {
		name string
		s    Rect
		want bool
	}{
		{"corner", Box(9, 9, 5, 5), true},
		{"within", Box(4, 4, 1, 1), true},
		{"touching", Box(10, 0, 5, 5), false},
		{"above", Box(0, -6, 5, 5), false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got, back := r.Overlaps(tt.s), tt.s.Overlaps(r); got != tt.want || back != tt.want {
				t.Errorf("Overlaps(%v) = %v, and back %v, want %v", tt.s, got, back, tt.want)
			}
		})
	}
}
