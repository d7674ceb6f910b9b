package engine

import (
	"math"
	"math/rand/v2"
	"testing"

	"toewright/internal/study"
	"toewright/solver"
)

// largest returns the largest of a figure in size over the loads of a car.
func largest(loads []Load, car string, of func(*Load) float64) (most float64) {
	for i := range loads {
		if loads[i].Candidate == car {
			most = math.Max(most, math.Abs(of(&loads[i])))
		}
	}
	return most
}

// checkPeaks holds the peaks of a car against its own call's figures.
func checkPeaks(t *testing.T, what string, list []LoadPeak, loads []Load, car string) {
	t.Helper()
	want := map[study.LimitKey]func(*Load) float64{
		"tieRodLoad":  func(l *Load) float64 { return float64(l.TieRod) },
		"armTwist":    func(l *Load) float64 { return float64(l.Arm.Twist) },
		"armBend":     func(l *Load) float64 { return float64(l.Arm.Bend) },
		"studBending": func(l *Load) float64 { return float64(l.Stud.Bending) },
	}
	for i := range list {
		p := &list[i]
		if w := largest(loads, car, want[p.Figure]); math.Abs(float64(p.Value)-w) > 1e-9*w {
			t.Errorf("%s: %s %.9g, want %.9g", what, p.Figure, p.Value, w)
		}
		delete(want, p.Figure)
	}
	if len(want) > 0 {
		t.Errorf("%s: %d figures are missing", what, len(want))
	}
}

// TestPeaksOfShelfAndFront: each combination of the shelf and each design of a front shows
// the largest loads that a candidate of the same changes has.
func TestPeaksOfShelfAndFront(t *testing.T) {
	d := limitedStudy(t, "")
	shelf, err := Choose(t.Context(), d, ChooseOptions{})
	if err != nil {
		t.Fatal(err)
	}
	front, err := TradeOff(t.Context(), d, TradeOffOptions{Designs: new(2)})
	if err != nil {
		t.Fatal(err)
	}
	check := func(what string, list []LoadPeak, changes study.Changes) {
		e := d.Clone()
		e.Candidates = []study.Candidate{{Name: "same", Changes: changes}}
		checkPeaks(t, what, list, loadsOf(t, e), "same")
	}
	for i := range shelf.Best {
		check("shelf", shelf.Best[i].Loads, shelf.Best[i].Changes)
	}
	for i := range front.Designs {
		check("front", front.Designs[i].Loads, front.Designs[i].Values)
	}
	d.Loads = nil
	if shelf, err = Choose(t.Context(), d, ChooseOptions{}); err != nil || shelf.Best[0].Loads != nil {
		t.Errorf("without load cases: %v, loads %v", err, shelf.Best[0].Loads)
	}
	d = limitedStudy(t, "")
	d.Suspension.Left.Spring = nil
	if shelf, err = Choose(t.Context(), d, ChooseOptions{}); err != nil || shelf.Best[0].Loads != nil {
		t.Errorf("without the spring that the loads need: %v, loads %v", err, shelf.Best[0].Loads)
	}
}

// TestLoadsSpread holds the standard deviation of each largest load against that of cars
// built by chance (JCGM 101), of a corner and of a solid axle: 4000 cars tell it to some 1 %.
func TestLoadsSpread(t *testing.T) {
	corner := limitedStudy(t, "")
	corner.Tolerances = []study.Tolerance{
		{Parameter: "tieRodOuterHeight", SD: 0.6}, {Parameter: "steeringArmLength", SD: 0.8},
		{Parameter: "lowerBallJoint.x", SD: 1.2}, {Parameter: "tieRodInner.z", SD: 1},
	}
	corner.Candidates = []study.Candidate{{Name: "low ball", Changes: study.Changes{"tieRodOuterHeight": -8}}}
	axle := loaded(t, study.Template{Key: "solid-axle-rack"})
	axle.Yield = nil
	axle.Tolerances = []study.Tolerance{
		{Parameter: "tieRodOuterHeight", SD: 0.6}, {Parameter: "dragLink.outer.x", SD: 1.5},
		{Parameter: "links.3.inner.z", SD: 2}, {Parameter: "kingpins.1.x", SD: 1},
	}
	axle.Candidates = []study.Candidate{{Name: "low ball", Changes: study.Changes{"tieRodOuterHeight": -8, "caster": 7}}}
	for _, tt := range []struct {
		d       *study.Document
		figures int
	}{{corner, 4}, {axle, 2}} {
		t.Run(tt.d.Suspension.Type, func(t *testing.T) { spreadAsBuilt(t, tt.d, tt.figures) })
	}
}

func spreadAsBuilt(t *testing.T, d *study.Document, figures int) {
	run, err := NewToleranceRun(d, ToleranceOptions{Candidate: "low ball", Cars: new(50)})
	if err != nil {
		t.Fatal(err)
	}
	peaks := run.loads()
	if len(peaks) != figures {
		t.Fatalf("%d figures, want %d", len(peaks), figures)
	}
	random := rand.New(rand.NewPCG(7, 8))
	sum, square := make([]float64, figures), make([]float64, figures)
	const cars = 4000
	parts, ws := run.loadParts(), solver.NewWorkspace()
	for range cars {
		var list []solver.Change
		for _, e := range run.spread.Errors {
			list = append(list, solver.Change{Parameter: e.Parameter, Sides: e.Sides, Value: e.SD() * random.NormFloat64()})
		}
		car, err := run.base.Assemble(append(list, run.spread.Car.Changes()...), solver.HoldAll)
		if err != nil {
			t.Fatal(err)
		}
		k, err := car.Statics(parts)
		if err != nil {
			t.Fatal(err)
		}
		for i := range peaks {
			p := &peaks[i]
			in := run.loadCase(&d.Loads[p.at])
			var f [2]solver.Forces
			if err := k.Forces(ws, &in, &f); err != nil {
				t.Fatal(err)
			}
			v := loadPeaked[p.of].of(&f[p.side]) / loadPeaked[p.of].unit
			sum[i] += v
			square[i] += v * v
		}
	}
	for i := range peaks {
		p := &peaks[i]
		mean := sum[i] / cars
		sd := math.Sqrt(square[i]/cars - mean*mean)
		if p.SD == nil || math.Abs(float64(*p.SD)/sd-1) > 0.05 {
			t.Errorf("%s: standard deviation %v, cars give %.4g", p.Figure, p.SD, sd)
		}
	}
}
