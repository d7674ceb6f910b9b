package main

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	_ "image/png"
	"math"
	"os"
	"testing"
)

const committed = "../../app/web/"

func TestCommittedVectorIsCurrent(t *testing.T) {
	got, err := os.ReadFile(committed + "icon.svg")
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, vector(drawing())) {
		t.Error("icon.svg is not what this command draws; run go generate ./app")
	}
}

func TestCommittedPicturesAreCurrent(t *testing.T) {
	for _, size := range []int{192, 512} {
		f, err := os.Open(fmt.Sprintf("%sicon-%d.png", committed, size))
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		got, _, err := image.Decode(f)
		if err != nil {
			t.Fatal(err)
		}
		if !same(got, picture(drawing(), size)) {
			t.Errorf("icon-%d.png is not what this command draws; run go generate ./app", size)
		}
	}
}

func same(a, b image.Image) bool {
	if a.Bounds() != b.Bounds() {
		return false
	}
	for y := a.Bounds().Min.Y; y < a.Bounds().Max.Y; y++ {
		for x := a.Bounds().Min.X; x < a.Bounds().Max.X; x++ {
			if color.NRGBAModel.Convert(a.At(x, y)) != color.NRGBAModel.Convert(b.At(x, y)) {
				return false
			}
		}
	}
	return true
}

// TestDrawingIsSafeUnderARoundMask checks the zone that the web's manifest
// promises to leave whole: a circle of 0.4 of the side.
func TestDrawingIsSafeUnderARoundMask(t *testing.T) {
	for i, s := range drawing() {
		for _, p := range s.points {
			if d := math.Hypot(p.x-side/2, p.y-side/2) + s.width/2; d > 0.4*side {
				t.Errorf("stroke %d reaches %.0f from the middle, want at most %.0f", i, d, 0.4*side)
			}
		}
	}
}

func TestStrokeDistance(t *testing.T) {
	line := stroke{points: []point{{0, 0}, {10, 0}}, width: 2}
	disc := stroke{points: []point{{0, 0}}, width: 2}
	tests := []struct {
		name string
		s    stroke
		p    point
		want float64
	}{
		{"beside the line", line, point{5, 3}, 2},
		{"on the line", line, point{5, 0}, -1},
		{"past its end", line, point{13, 4}, 4},
		{"beside the disc", disc, point{3, 4}, 4},
	}
	for _, tt := range tests {
		if got := tt.s.distance(tt.p); got != tt.want {
			t.Errorf("%s: distance = %g, want %g", tt.name, got, tt.want)
		}
	}
}
