//go:build unix

package main

import (
	"math"
	"slices"
	"strings"
	"testing"
)

// loadHere loads a case from the repository's root.
func loadHere(t *testing.T, name, file string) *subject {
	t.Helper()
	t.Chdir("../..")
	s, _, err := load(t.TempDir(), name, file, windowBump, windowStep)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestTextNamesEveryPoint(t *testing.T) {
	text := loadHere(t, "solid-axle", "sa01_cross_steer_right_arm.json").text()
	for _, want := range []string{
		"kind solid-axle\n", "point left.kingpins.0 -18 612 480\n", "point right.wheelCentres 0 -780 390\n",
		"point links.3.outer 110 -440 440\n", "dragSide right\n", "travel -80\n", "travel 76\n",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in:\n%s", want, text)
		}
	}
}

func TestCheckFindsAWrongToe(t *testing.T) {
	s := loadHere(t, "strut", "st01_hatch_rear_steer.json")
	w, err := newSweeper(s, s.travels)
	if err != nil {
		t.Fatal(err)
	}
	if err := w.sweep(); err != nil {
		t.Fatal(err)
	}
	toes := w.toes()
	if err := s.check("ours", toes); err != nil {
		t.Error(err)
	}
	for _, tt := range []struct {
		name string
		toes []float64
	}{
		{"too few", toes[1:]},
		{"one is off", with(toes, 0, toes[0]+2*toeLimit)},
		{"no number", with(toes, 20, math.NaN())},
	} {
		if err := s.check("theirs", tt.toes); err == nil {
			t.Errorf("%s: accepted", tt.name)
		}
	}
}

// with returns xs with x in place i.
func with(xs []float64, i int, x float64) []float64 {
	out := slices.Clone(xs)
	out[i] = x
	return out
}
