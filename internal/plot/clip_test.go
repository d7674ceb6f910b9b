package plot

import (
	"testing"

	"pgregory.net/rapid"
)

func TestClip(t *testing.T) {
	r := Box(0, 0, 10, 10)
	tests := []struct {
		name         string
		a, b         Point
		wantA, wantB Point
		ok           bool
	}{
		{"inside", Point{1, 2}, Point{3, 4}, Point{1, 2}, Point{3, 4}, true},
		{"right through", Point{-5, 5}, Point{15, 5}, Point{0, 5}, Point{10, 5}, true},
		{"over a corner", Point{-5, 5}, Point{5, -5}, Point{0, 0}, Point{0, 0}, true},
		{"one end", Point{5, 5}, Point{5, 25}, Point{5, 5}, Point{5, 10}, true},
		{"along the edge", Point{-1, 10}, Point{4, 10}, Point{0, 10}, Point{4, 10}, true},
		{"beside", Point{-1, 11}, Point{4, 11}, Point{}, Point{}, false},
		{"past a corner", Point{-5, 2}, Point{2, -5}, Point{}, Point{}, false},
		{"a point", Point{2, 2}, Point{2, 2}, Point{2, 2}, Point{2, 2}, true},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			a, b, ok := r.clip(tt.a, tt.b)
			if ok != tt.ok || ok && (a != tt.wantA || b != tt.wantB) {
				t.Errorf("clip(%v, %v) = %v, %v, %v, want %v, %v, %v", tt.a, tt.b, a, b, ok, tt.wantA, tt.wantB, tt.ok)
			}
		})
	}
}

// points draws points in and around the box 0, 0, 100, 100.
func points(t *rapid.T, label string) Point {
	c := rapid.Float64Range(-100, 200)
	return Point{c.Draw(t, label+" x"), c.Draw(t, label+" y")}
}

func TestClipKeepsWhatIsInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, a, b := Box(0, 0, 100, 100), points(t, "a"), points(t, "b")
		from, to, ok := r.clip(a, b)
		p := a.Towards(b, rapid.Float64Range(0, 1).Draw(t, "t"))
		if ok && !(r.Contains(from) && r.Contains(to)) {
			t.Fatalf("clip(%v, %v) = %v, %v leaves the box", a, b, from, to)
		}
		// A point well inside must lie between the two ends that are left.
		if r.Inset(1, 1, 1, 1).Contains(p) {
			if detour := from.Sub(p).Length() + p.Sub(to).Length() - from.Sub(to).Length(); !ok || detour > 1e-9 {
				t.Fatalf("clip(%v, %v) = %v, %v, %v lost %v", a, b, from, to, ok, p)
			}
		}
	})
}

func TestPenJoinsWhatTouches(t *testing.T) {
	p := pen{area: Box(0, 0, 10, 10)}
	for _, q := range []Point{{1, 1}, {5, 5}, {15, 5}, {15, 8}, {5, 8}, {1, 8}} {
		p.to(q)
	}
	if got, want := p.path.String(), "M1 1L5 5L10 5M10 8L5 8L1 8"; got != want {
		t.Errorf("path = %q, want %q", got, want)
	}
}
