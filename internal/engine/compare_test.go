package engine

import (
	"math"
	"testing"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

func compareOf(t *testing.T, d *study.Document, o CompareOptions) *CompareResult {
	t.Helper()
	got, err := Compare(t.Context(), d, o)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// TestCompareAgainstSweep recomputes figures from the positions of a sweep.
func TestCompareAgainstSweep(t *testing.T) {
	d := document(t, "")
	sweeps := sweepOf(t, d, SweepOptions{}).Sweeps
	got := compareOf(t, d, CompareOptions{})
	if len(got.Cars) != len(sweeps) {
		t.Fatalf("%d cars, want %d", len(got.Cars), len(sweeps))
	}
	for i, s := range sweeps {
		c, ps := &got.Cars[i], s.Positions
		if c.Candidate != s.Candidate || c.Side != s.Side {
			t.Fatalf("car %d is %s %s, want %s %s", i, c.Candidate, c.Side, s.Candidate, s.Side)
		}
		sum, peak, least, most := 0.0, 0.0, math.Inf(1), math.Inf(-1)
		for _, p := range ps {
			change := p.Toe - ps[4].Toe
			sum += change * change
			peak = math.Max(peak, math.Abs(change))
			least, most = math.Min(least, p.Toe), math.Max(most, p.Toe)
		}
		near(t, "rms", float64(c.RMS), math.Sqrt(sum/float64(len(ps))), 1e-12)
		near(t, "peak", float64(c.Peak), peak, 1e-12)
		near(t, "peak to peak", float64(c.PeakToPeak), most-least, 1e-12)
		near(t, "slope", float64(c.Slope), float64(ps[4].ToeRate), 1e-12)
		near(t, "static caster", float64(c.StaticCaster), float64(ps[4].Caster), 1e-12)
		if c.CrossesZero != (least < 0 && most > 0) {
			t.Errorf("crosses zero: %v with toe from %g to %g", c.CrossesZero, least, most)
		}
	}
}

func TestCompareDifferences(t *testing.T) {
	got := compareOf(t, document(t, ""), CompareOptions{Yardstick: "low ball"})
	base, low := &got.Cars[0], &got.Cars[2]
	near(t, "difference of rms", float64(base.Difference.RMS), float64(base.RMS-low.RMS), 1e-15)
	near(t, "difference of slope", float64(base.Difference.Slope), float64(base.Slope-low.Slope), 1e-15)
	for _, n := range low.Difference.numbers() {
		if *n != 0 && n.Valid() {
			t.Errorf("the yardstick differs from itself by %g", float64(*n))
		}
	}
	if base.RMS == low.RMS || got.Yardstick != "low ball" {
		t.Errorf("rms %g of both, yardstick %q", float64(base.RMS), got.Yardstick)
	}
}

func TestCompareTakesYardstickOfTheStudy(t *testing.T) {
	d := document(t, `"display": {"yardstick": "caster 6"},`)
	if got := compareOf(t, d, CompareOptions{}).Yardstick; got != "caster 6" {
		t.Errorf("yardstick %q, want that of the study's display", got)
	}
	d.Display.Yardstick = "gone"
	_, err := Compare(t.Context(), d, CompareOptions{})
	wantError(t, err, Wrong, "display.yardstick", "gone")
}

// TestCompareTarget checks that the error is against the target, over the window
// of the search.
func TestCompareTarget(t *testing.T) {
	d := document(t, `"search": {"variables": [], "target": [[0, 0], [20, 0.5]], "window": {"bump": 20, "droop": 0, "step": 20}},`)
	got := compareOf(t, d, CompareOptions{Candidate: "base"})
	plain := compareOf(t, document(t, `"search": {"variables": [], "window": {"bump": 20, "droop": 0, "step": 20}},`), CompareOptions{Candidate: "base"})
	if got.Window != (Window{Bump: 20, Droop: 0, Step: 20}) {
		t.Fatalf("window %+v, want that of the search", got.Window)
	}
	change := float64(plain.Cars[0].Peak) // at travel 20 alone; toe goes out there
	near(t, "peak", float64(got.Cars[0].Peak), math.Max(math.Abs(0.5-change), math.Abs(0.5+change)), 1e-9)
}

// TestCompareSteering checks the figures that need wheelbase and steering wheel.
func TestCompareSteering(t *testing.T) {
	d := document(t, "")
	f := compareOf(t, d, CompareOptions{Candidate: "base"}).Cars[0].Figures
	for _, n := range []Number{f.ToeOutOnTurns, f.Ackermann, f.SteeringRatio, f.TurningCircle, f.TieRodLength, f.RollCentre} {
		if !n.Valid() {
			t.Errorf("a figure is missing in %+v", f)
		}
	}
	near(t, "tie-rod length", float64(f.TieRodLength), math.Hypot(math.Hypot(15, 345), 5), 1e-9)
	d.Vehicle.Wheelbase, d.Steering.PerTurn, d.Steering.Lock = 0, 0, 0
	f = compareOf(t, d, CompareOptions{Candidate: "base"}).Cars[0].Figures
	if !f.ToeOutOnTurns.Valid() || f.Ackermann.Valid() || f.SteeringRatio.Valid() || f.TurningCircle.Valid() {
		t.Errorf("without wheelbase, turns and lock: %+v, want toe-out on turns alone", f.SteeringFigures)
	}
}

// TestCompareOfAnAxleThatDoesNotSteer has no figures of steering: there are none, which
// is not the same as 0.
func TestCompareOfAnAxleThatDoesNotSteer(t *testing.T) {
	d := document(t, "")
	d.Steering = nil
	c, err := Compare(t.Context(), d, CompareOptions{Candidate: "base"})
	if err != nil {
		t.Fatal(err)
	}
	f := c.Cars[0].Figures
	for name, x := range map[string]Number{"toe-out on turns": f.ToeOutOnTurns, "Ackermann": f.Ackermann, "steering ratio": f.SteeringRatio, "turning circle": f.TurningCircle} {
		if x.Valid() {
			t.Errorf("%s = %g, want none", name, float64(x))
		}
	}
	if !f.RMS.Valid() || !f.StaticToe.Valid() {
		t.Errorf("toe %v, RMS %v, want both", f.StaticToe, f.RMS)
	}
}

// TestFiguresOfNoCurve: a curve without a position has no figure at all, which is not
// the same as 0.
func TestFiguresOfNoCurve(t *testing.T) {
	d := document(t, "")
	s, err := newSweeper(d, d.Window(), "")
	if err != nil {
		t.Fatal(err)
	}
	f := s.figures(&solver.Curve{}, &optimize.Target{})
	for i, n := range f.numbers() {
		if n.Valid() {
			t.Errorf("figure %d of no curve = %g, want none", i, float64(*n))
		}
	}
}
