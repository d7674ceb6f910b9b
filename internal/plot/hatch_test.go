package plot

import "testing"

func TestAppendHatch(t *testing.T) {
	got := AppendHatch(nil, Point{0, 0}, Point{50, 0}, Point{0, 6}).String()
	want := "M0 0L50 0" + "M10 0L0 6M20 0L10 6M30 0L20 6M40 0L30 6M50 0L40 6"
	if got != want {
		t.Errorf("AppendHatch = %q, want %q", got, want)
	}
}
