package model_test

import (
	"math"
	"testing"

	"toewright/app/model"
	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/solver"
)

// travelTolerance is how near a travel must come back, mm: far below any gauge.
const travelTolerance = 1e-6

// readAt returns a study whose only readings were taken at the given wheel travels, mm,
// as a gauge of travel shows them.
func readAt(t *testing.T, travelAs string, side study.Side, wheel []float64) *model.Session {
	t.Helper()
	s := template(t, "double-wishbone-rack")
	set := study.Reading{Side: side, Gauge: "indicators", Base: 300, TravelAs: travelAs}
	gauge, err := engine.TravelGauge(s.Document(), &set)
	if err != nil {
		t.Fatal(err)
	}
	ws := solver.NewWorkspace()
	for _, travel := range wheel {
		shown := travel
		if gauge != nil {
			if shown, err = s.Cars().Base().Axle.ReadTravel(ws, map[study.Side]solver.Side{study.Right: solver.Right}[side], gauge, travel); err != nil {
				t.Fatal(err)
			}
		}
		set.Values = append(set.Values, [2]float64{s.Document().Units.FromMillimetres(shown), 0})
	}
	if err := s.Edit("readings", "", func(d *study.Document) { d.Readings = []study.Reading{set} }); err != nil {
		t.Fatal(err)
	}
	return s
}

func TestReadTravels(t *testing.T) {
	wheel := []float64{-40, 0, 35}
	for _, travelAs := range []string{"", "wheel-centre", "block", "damper", "lower-ball-joint"} {
		for _, side := range []study.Side{study.Left, study.Right} {
			got := readAt(t, travelAs, side, wheel).ReadTravels(0)
			if len(got) != len(wheel) {
				t.Fatalf("read at %q, %s: travels = %v, want %v", travelAs, side, got, wheel)
			}
			for i := range wheel {
				if !(math.Abs(got[i]-wheel[i]) <= travelTolerance) {
					t.Errorf("read at %q, %s: travel = %g mm, want %g", travelAs, side, got[i], wheel[i])
				}
			}
		}
	}
}

// TestReadTravelsAreKept checks that an edit of a candidate, as in a drag, leaves them
// as they are.
func TestReadTravelsAreKept(t *testing.T) {
	s := readAt(t, "damper", study.Left, []float64{-20, 0, 20})
	before := s.ReadTravels(0)
	if err := s.SetChange(1, "tieRodOuterHeight", -3, ""); err != nil {
		t.Fatal(err)
	}
	if after := s.ReadTravels(0); &after[0] != &before[0] {
		t.Error("the travels were computed anew for an edit of a candidate")
	}
}

func TestReadTravelsWithoutADamper(t *testing.T) {
	s := readAt(t, "damper", study.Left, []float64{-20, 0, 20})
	if err := s.Edit("no damper", "", func(d *study.Document) { d.Suspension.Left.Damper = nil }); err != nil {
		t.Fatal(err)
	}
	if got := s.ReadTravels(0); got != nil {
		t.Errorf("travels = %v, want none without a damper", got)
	}
}
