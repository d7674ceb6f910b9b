package plot

import "testing"

func TestAppendHatch(t *testing.T) {
	got := AppendHatch(nil, Point{0, 0}, Point{50, 0}, Point{0, 6}).String()
	want := "M0 0L50 0" + "M10 0L0 6M20 0L10 6M30 0L20 6M40 0L30 6M50 0L40 6"
	if got != want {
		t.Errorf("AppendHatch = %q, want %q", got, want)
	}
}

func TestAppendPivotHatchesTheBody(t *testing.T) {
	at := Point{100, 100}
	for _, body := range []Point{{7, 0}, {-1, 0}, {0, 3}, {1, -1}} {
		for _, q := range corners(t, AppendPivot(nil, at, body, 5)) {
			onCircle := near(q.Sub(at).Length(), 5, 2*rounding)
			beyond := q.Sub(at).Dot(body.Unit()) >= 7-2*rounding
			if !onCircle && !beyond {
				t.Errorf("body at %v: %v is neither on the circle nor in the body", body, q)
			}
		}
	}
	if got := AppendPivot(nil, Point{nan, 0}, Point{1, 0}, 5); len(got) != 0 {
		t.Errorf("AppendPivot at a gap = %q", got)
	}
}
