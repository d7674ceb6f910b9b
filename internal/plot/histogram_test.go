package plot

import (
	"testing"
)

func TestAppendBins(t *testing.T) {
	f := NewFrame(Box(0, 0, 100, 100), Domain{0, 10}, Domain{0, 10})
	got := f.AppendBins(nil, []float64{0, 5, 10, 15}, []int{2, 0, 3}).String()
	if want := "M0 80L50 80L50 100L0 100Z"; got != want {
		t.Errorf("AppendBins = %q, want %q: neither empty bins nor those outside", got, want)
	}
	wantWithin(t, f.AppendBins(nil, []float64{-5, 5, 15}, []int{30, 3}), f.Area)
}
