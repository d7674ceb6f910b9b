package model_test

import (
	"slices"
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/solver"
)

// pointNames returns the names of all hardpoints of all kinds of suspension and gear.
func pointNames() []string {
	points := slices.Clone(solver.GearPoints)
	for _, k := range solver.Kinds() {
		points = slices.Concat(points, k.SidePoints, k.CommonPoints)
	}
	var names []string
	for _, p := range points {
		names = append(names, p.Name)
	}
	return names
}

// TestEveryPointIsExplained asks for one sentence about each point that can be measured.
func TestEveryPointIsExplained(t *testing.T) {
	told := map[string]string{}
	for _, name := range pointNames() {
		about := model.AboutPoint(name)
		if n := len(about); n < 60 || n > 200 || strings.Index(about, ".") != n-1 {
			t.Errorf("%s: %q, want one sentence of 60 to 200 letters", name, about)
		}
		family := strings.TrimRight(strings.Map(noDigit, name), ".")
		if other, ok := told[about]; ok && other != family {
			t.Errorf("%s and %s are told the same", name, other)
		}
		told[about] = family
	}
}

// noDigit drops digits: the rods of an axle differ in nothing else.
func noDigit(r rune) rune {
	if r >= '0' && r <= '9' {
		return -1
	}
	return r
}

func TestOtherPointsAreNotExplained(t *testing.T) {
	for _, name := range []string{"", "elbow", "kingpins.2", "rods.0.middle"} {
		if about := model.AboutPoint(name); about != "" {
			t.Errorf("%q is said to be: %s", name, about)
		}
	}
}
