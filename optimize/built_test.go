package optimize_test

import (
	"context"
	"math"
	"strings"
	"testing"

	"toewright/optimize"
	"toewright/solver"
)

// builtSeries is textbookSeries with static toe as built, and the tie rod's own
// length off by 0.2 mm, one standard deviation.
func builtSeries(t testing.TB) *optimize.Series {
	t.Helper()
	s := textbookSeries(t)
	s.Tolerances = append(s.Tolerances, toleranceOf(t, s, "tieRodLength", 0.2))
	leaveToe(t, s)
	return s
}

func toleranceOf(t testing.TB, s *optimize.Series, key string, sd float64) optimize.Tolerance {
	t.Helper()
	p, sides, err := solver.FindParameter(s.Base.Design(), key)
	if err != nil {
		t.Fatal(err)
	}
	return optimize.Tolerance{Parameter: p, Sides: sides, Distribution: optimize.Distribution{Spread: sd}}
}

func leaveToe(t testing.TB, s *optimize.Series) {
	t.Helper()
	drawn, err := s.Base.Assemble(s.Changes, s.Hold)
	if err != nil {
		t.Fatal(err)
	}
	if err := s.LeaveToe(drawn); err != nil {
		t.Fatal(err)
	}
}

// TestBuiltCensusAgreesWithPropagation: both methods give the same spread, that of
// the static toe at travel 0 among them.
func TestBuiltSampleAgreesWithPropagation(t *testing.T) {
	p, c := countCars(t, builtSeries(t), cars(4000))
	band := c.Band(0.15865525393145707, 0.8413447460685429) // one standard deviation each way
	for i := range p.SD {
		got := (band[1][i] - band[0][i]) / 2
		// Of 4000 draws a standard deviation is known to some 1.1 %.
		if !(p.SD[i] > 0) || !(math.Abs(got-p.SD[i]) <= 0.05*p.SD[i]) {
			t.Errorf("position %d: sampled sd %.5g rad, linear %.5g", i, got, p.SD[i])
		}
	}
}

// TestBuiltWithoutToleranceIsTheDrawnCar: a series whose tolerances are all 0 has
// the curve of the car as drawn, whether toe is re-set or not.
func TestBuiltWithoutToleranceIsTheDrawnCar(t *testing.T) {
	for _, built := range []bool{false, true} {
		s := textbookSeries(t)
		s.Changes = []solver.Change{{Parameter: toleranceOf(t, s, "tieRodOuterHeight", 0).Parameter, Value: 2}}
		for i := range s.Tolerances {
			s.Tolerances[i].Spread = 0
		}
		want, err := s.Propagate()
		if err != nil {
			t.Fatal(err)
		}
		if built {
			leaveToe(t, s)
		}
		_, c := countCars(t, s, cars(3))
		for i, got := range c.Band(0.5)[0] {
			if !(math.Abs(got-want.Nominal[i]) <= 1e-11) {
				t.Errorf("built %v: position %d is off by %.3g rad", built, i, got-want.Nominal[i])
			}
		}
	}
}

// TestRodLengthOfASeries: where toe is re-set a rod's length decides nothing; as
// built it moves toe at all travels by nearly the same.
func TestRodLengthOfASeries(t *testing.T) {
	s := textbookSeries(t)
	s.Tolerances = []optimize.Tolerance{toleranceOf(t, s, "tieRodLength", 0.2)}
	reset, err := s.Propagate()
	if err != nil {
		t.Fatal(err)
	}
	leaveToe(t, s)
	built, err := s.Propagate()
	if err != nil {
		t.Fatal(err)
	}
	// The ball stands 143 mm behind the steering axis, the rod nearly square to that.
	const arm = 143.0
	for i := range built.SD {
		if reset.SD[i] != 0 {
			t.Errorf("position %d: %.3g rad of a rod that is adjusted", i, reset.SD[i])
		}
		if got := built.SD[i]; !(math.Abs(got-0.2/arm) <= 0.1*0.2/arm) {
			t.Errorf("position %d: sd %.5g rad, want near 0.2 mm on %g mm", i, got, arm)
		}
	}
}

// TestBuiltYieldAndHalving holds the linear estimate of halving against a series
// with that tolerance halved in truth.
func TestBuiltYieldAndHalving(t *testing.T) {
	s := builtSeries(t)
	s.Measure, s.Limit = optimize.Peak, solver.Deg(0.5)
	yield := func() float64 {
		_, c := countCars(t, s, cars(4000))
		share, _, _ := c.Yield()
		return share
	}
	before := yield()
	p, err := s.Propagate()
	if err != nil {
		t.Fatal(err)
	}
	best := p.Ranking()[0]
	gain := s.Halve(p)[best]
	s.Tolerances[best].Spread /= 2
	if after := yield(); !(gain > 0) || !(math.Abs(after-before-gain) <= 0.02) {
		t.Errorf("halving %s: yield rises by %.3f from %.3f, estimated %.3f", s.Tolerances[best].Key(), after-before, before, gain)
	}
}

// TestSeriesRefusesFloatingSetpoints: what comes of other parts has no tolerance of
// its own.
func TestSeriesRefusesFloatingSetpoints(t *testing.T) {
	for _, tt := range []struct {
		name, key string
		hold      solver.Hold
		built     bool
		ok        bool
	}{
		{"toe re-set", "toe", solver.HoldAll, false, true},
		{"toe as built", "toe", solver.HoldAll, true, false},
		{"caster held", "caster", solver.HoldAll, true, true},
		{"caster floats", "caster", solver.HoldToe, false, false},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s := textbookSeries(t)
			s.Hold = tt.hold
			s.Tolerances = []optimize.Tolerance{toleranceOf(t, s, tt.key, 0.001)}
			if tt.built {
				leaveToe(t, s)
			}
			switch err := s.Check(); {
			case tt.ok && err != nil:
				t.Error(err)
			case !tt.ok && (err == nil || !strings.Contains(err.Error(), tt.key+" is not re-set")):
				t.Errorf("error %v, want one that says %s is not re-set", err, tt.key)
			}
		})
	}
}

// TestRobustAsBuilt: a percentile of cars as built is that of such cars made one by
// one, and larger than where toe is re-set.
func TestRobustAsBuilt(t *testing.T) {
	p := optimize.RobustSearch{ToeSearch: *limitedSearch(t)}
	p.Measure, p.Limits = optimize.Peak, nil
	s := textbookSeries(t)
	p.Tolerances = append(s.Tolerances, toleranceOf(t, s, "tieRodLength", 0.2))
	reset, err := optimize.SearchRobust(context.Background(), &p, &optimize.Settings{Seed: 3, Restarts: 2})
	if err != nil {
		t.Fatal(err)
	}
	p.AsBuilt = true
	a, err := optimize.SearchRobust(context.Background(), &p, &optimize.Settings{Seed: 3, Restarts: 2})
	if err != nil {
		t.Fatal(err)
	}
	if !(a.Percentile.Value > reset.Percentile.Value) {
		t.Errorf("as built %.4f deg, re-set %.4f deg", a.Percentile.Value.Degrees(), reset.Percentile.Value.Degrees())
	}
	s.Tolerances, s.Measure, s.Seed = p.Tolerances, optimize.Peak, 99
	for i := range p.Free {
		s.Changes = append(s.Changes, solver.Change{Parameter: p.Free[i].Parameter, Sides: p.Free[i].Sides, Value: a.Values[i]})
	}
	leaveToe(t, s)
	_, c := countCars(t, s, cars(4000))
	if got := c.Figure.Quantile(0.95); !(math.Abs(got-float64(a.Percentile.Value)) <= 0.08*float64(a.Percentile.Value)) {
		t.Errorf("95th percentile of cars built: %.5g rad, the search said %.5g", got, float64(a.Percentile.Value))
	}
}
