package engine

import (
	"math"
	"testing"

	"toewright/internal/study"
)

// TestBallsAtLock compares the figures with what limits on the same results
// measure, and with the sweep's at each of the three steering inputs, below which none may
// lie.
func TestBallsAtLock(t *testing.T) {
	d := study.Template{Key: "double-wishbone-rack"}.Document()
	lock := d.Steering.Lock
	compare := func(steer float64) []Compared {
		t.Helper()
		r, err := Compare(t.Context(), d, CompareOptions{Candidate: study.BaseName, Attitude: Attitude{Steer: steer}})
		if err != nil {
			t.Fatal(err)
		}
		return r.Cars
	}
	got := compare(0)
	most := map[string]float64{}
	for _, steer := range []float64{0, lock, -lock} {
		for _, c := range compare(steer) {
			most[c.Side] = math.Max(most[c.Side], float64(c.OuterBallAngle))
		}
	}
	// Between the positions of the window, and with the finer look at its ends, an angle
	// may be larger by what a linkage bends over half a step.
	const between = 0.05
	for _, c := range got {
		if by := float64(c.OuterBallAtLock) - most[c.Side]; by < -1e-9 || by > between {
			t.Errorf("%s: outer ball at lock %.4f deg, sweeps at the locks have %.4f", c.Side, float64(c.OuterBallAtLock), most[c.Side])
		}
		if !(c.InnerBallAtLock >= c.InnerBallAngle) {
			t.Errorf("%s: inner ball at lock %.4f deg, straight ahead %.4f", c.Side, float64(c.InnerBallAtLock), float64(c.InnerBallAngle))
		}
	}
	any := 90.0
	d.Search.Limits = []study.Limit{{Result: "outerBallAngle", Max: &any, At: study.AtLock}}
	r, err := Standing(t.Context(), d, StandingOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if want := math.Max(float64(got[0].OuterBallAtLock), float64(got[1].OuterBallAtLock)); float64(r.Limits[0].Value) != want {
		t.Errorf("the limit has %g, the figures %g", float64(r.Limits[0].Value), want)
	}
	d.Steering.Lock = 0
	for _, c := range compare(0) {
		if c.OuterBallAtLock.Valid() {
			t.Errorf("%s: %g deg at a lock that is not stated", c.Side, float64(c.OuterBallAtLock))
		}
	}
}

// TestWorstSetUp asks for the set-up of the largest peak, and for none where one cannot be
// served.
func TestWorstSetUp(t *testing.T) {
	s := Served{Scenarios: []ScenarioResult{
		{Name: "low", ToeFigures: ToeFigures{Peak: 0.1}}, {Name: "high", ToeFigures: ToeFigures{Peak: 0.3}}, {Name: "mid", ToeFigures: ToeFigures{Peak: 0.2}},
	}}
	if got := s.Worst(); got == nil || got.Name != "high" {
		t.Errorf("worst set-up = %v, want high", got)
	}
	s.Scenarios[0].Peak = none
	if got := s.Worst(); got != nil {
		t.Errorf("worst set-up = %v where one is not served, want none", got.Name)
	}
}
