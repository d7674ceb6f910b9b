package scene_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"toewright/app/scene"
	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/solver"
)

// TestMovingAgrees moves every template's car through its travel: at each place of a sweep both
// wheels toe as the engine says, and so do the farthest ones.
func TestMovingAgrees(t *testing.T) {
	for _, template := range study.Templates() {
		desk := deskOf(t, template.Key)
		cars := desk.Session.Cars()
		size := scene.Size{Width: 640, Height: 300}
		base, err := scene.NewMoving(cars.Base(), nil, cars.Travels, size)
		if err != nil {
			t.Fatal(err)
		}
		sweep, err := engine.Sweep(t.Context(), desk.Session.Document(), engine.SweepOptions{Candidate: study.BaseName})
		if err != nil {
			t.Fatal(err)
		}
		most := 0.0
		for i := range sweep.Sweeps {
			s := &sweep.Sweeps[i]
			side := solver.Side(i % 2)
			rest := s.Positions[slices.IndexFunc(s.Positions, func(p engine.Position) bool { return p.Travel == 0 })].Toe
			for _, p := range s.Positions {
				mm := desk.Session.Document().Units.Millimetres(p.Travel)
				if err := base.To([2]float64{mm, mm}); err != nil {
					t.Fatal(err)
				}
				toe, change := base.Toe(side)
				if math.Abs(toe.Degrees()-p.Toe) > 1e-9 || math.Abs(change.Degrees()-(p.Toe-rest)) > 1e-9 {
					t.Errorf("%s, %v at %g: toe %g and change %g, the engine says %g and %g", template.Key, side, p.Travel, toe.Degrees(), change.Degrees(), p.Toe, p.Toe-rest)
				}
				most = max(most, math.Abs(p.Toe-rest))
			}
		}
		if got := math.Abs(base.Farthest().Degrees()); math.Abs(got-most) > 1e-9 {
			t.Errorf("%s: farthest %g deg, the engine's sweep has %g", template.Key, got, most)
		}
	}
}

// TestMovingDraws moves a car under another to the ends of their travel and beyond, both wheels
// alike and not: every path is drawn, the dashed arms only where there is a car beneath, and a
// frame allocates little.
func TestMovingDraws(t *testing.T) {
	desk := deskOf(t, "double-wishbone-rack")
	cars := desk.Session.Cars()
	base, err := scene.NewMoving(cars.Base(), nil, cars.Travels, scene.Size{Width: 640, Height: 300})
	if err != nil {
		t.Fatal(err)
	}
	over, err := scene.NewMoving(cars.At(1), base, cars.Travels, scene.Size{Width: 640, Height: 300})
	if err != nil {
		t.Fatal(err)
	}
	low, high := cars.Travels[0], cars.Travels[len(cars.Travels)-1]
	for _, travel := range [][2]float64{{low, low}, {high, high}, {high, low}, {0, high}, {2 * high, high}} {
		if base.To(travel) != nil || over.To(travel) != nil {
			t.Fatalf("%v is not reached", travel)
		}
		for i, path := range over.Paths() {
			if len(path) == 0 || strings.Contains(string(path), "NaN") {
				t.Errorf("%v: path of class %s is %.40q", travel, scene.MovingClasses[i], path)
			}
		}
		if len(base.Paths()[6]) > 0 {
			t.Error("a ghost is drawn where there is no car beneath")
		}
	}
	frame := 0.0
	if n := testing.AllocsPerRun(50, func() { frame++; _ = over.To([2]float64{frame, frame}) }); n > 30 {
		t.Errorf("a frame allocates %g times", n)
	}
}
