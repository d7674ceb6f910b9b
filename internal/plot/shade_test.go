package plot

import (
	"bytes"
	"testing"
)

func TestClassify(t *testing.T) {
	levels := []float64{0, 1, 2}
	got := Classify(nil, []float64{-1, 0, 0.5, 2, 9, nan}, levels)
	if want := []uint8{0, 1, 1, 3, 3, Hole}; !bytes.Equal(got, want) {
		t.Errorf("Classify = %v, want %v", got, want)
	}
}

func TestRampRunsOneWay(t *testing.T) {
	for _, dark := range []bool{false, true} {
		ramp := Ramp(12, dark)
		sign := 1.0
		if dark {
			sign = -1
		}
		for i := 1; i < len(ramp); i++ {
			if step := sign * (ramp[i-1].luminance() - ramp[i].luminance()); !(step > 0) {
				t.Errorf("dark %v: colour %d is not farther from the paper than the one before", dark, i)
			}
		}
	}
}

func TestAppendPixels(t *testing.T) {
	ramp := []Colour{{1, 2, 3}, {4, 5, 6}}
	got := AppendPixels(nil, []uint8{0, 1, Hole, 0}, 2, ramp)
	want := []byte{0, 0, 0, 0, 1, 2, 3, 255, 1, 2, 3, 255, 4, 5, 6, 255}
	if !bytes.Equal(got, want) {
		t.Errorf("AppendPixels = %v, want the upper row first, %v", got, want)
	}
	if got := AppendPixels(nil, []uint8{0}, 0, ramp); got != nil {
		t.Errorf("AppendPixels without columns = %v", got)
	}
}
