package plot

import "testing"

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
