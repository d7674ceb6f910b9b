package main

import (
	"slices"
	"testing"
)

func TestFoldParts(t *testing.T) {
	two := fold{repeat: 1, group: 2}
	tests := []struct {
		name   string
		fold   fold
		widths []int
		want   [][]int
	}{
		{name: "no fold", widths: []int{90, 90}, want: [][]int{{0, 1}}},
		{name: "fits", fold: two, widths: []int{20, 20, 20}, want: [][]int{{0, 1, 2}}},
		{name: "just fits", fold: two, widths: []int{10, 23, 23, 23, 23, 0}, want: [][]int{{0, 1, 2, 3, 4, 5}}},
		{name: "one too wide", fold: two, widths: []int{11, 23, 23, 23, 23, 0}, want: [][]int{{0, 1, 2, 3, 4}, {0, 5}}},
		{name: "groups stay together", fold: two, widths: []int{10, 40, 40, 40, 40}, want: [][]int{{0, 1, 2}, {0, 3, 4}}},
		{name: "a group too wide stands alone", fold: two, widths: []int{10, 90, 90, 9, 9}, want: [][]int{{0, 1, 2}, {0, 3, 4}}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := tt.fold.parts(tt.widths); !slices.EqualFunc(got, tt.want, slices.Equal) {
				t.Errorf("parts(%v) = %v, want %v", tt.widths, got, tt.want)
			}
		})
	}
}
