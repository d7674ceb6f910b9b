package model_test

import (
	"math"
	"slices"
	"testing"

	"toewright/app/model"
	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/solver"
)

func TestTolerances(t *testing.T) {
	s := open(t)
	if err := s.Edit("none", "", func(d *study.Document) { d.Tolerances = nil }); err != nil {
		t.Fatal(err)
	}
	if err := s.AddTolerance("tieRodOuterHeight"); err != nil {
		t.Fatal(err)
	}
	want := []study.Tolerance{{Parameter: "tieRodOuterHeight", PlusMinus: 0.5}}
	if got := s.Document().Tolerances; len(got) != 1 || got[0].Parameter != want[0].Parameter || got[0].PlusMinus != want[0].PlusMinus {
		t.Errorf("tolerances %+v, want the usual one, %+v", got, want)
	}
	if err := s.SetTolerance(0, func(t *study.Tolerance) { t.PlusMinus = 0.2 }); err != nil || s.Document().Tolerances[0].PlusMinus != 0.2 {
		t.Errorf("SetTolerance = %v, tolerances %+v, want 0.2", err, s.Document().Tolerances)
	}
	if err := s.RemoveTolerance(0); err != nil || len(s.Document().Tolerances) != 0 {
		t.Errorf("RemoveTolerance = %v, tolerances %+v, want none", err, s.Document().Tolerances)
	}
	if err := s.AddTolerance("noSuchThing"); err == nil {
		t.Error("a tolerance of nothing was taken")
	}
}

// TestUsualTolerances gives every car those of its main parameters, in the unit of each.
func TestUsualTolerances(t *testing.T) {
	for _, tm := range study.Templates() {
		s := model.Open(tm.Document())
		if err := s.Edit("none", "", func(d *study.Document) { d.Tolerances = nil }); err != nil {
			t.Fatal(err)
		}
		if err := s.AddUsualTolerances(); err != nil {
			t.Fatal(err)
		}
		for _, tol := range s.Document().Tolerances {
			if _, _, err := solver.FindParameter(s.Cars().Design, tol.Parameter); err != nil || !(tol.PlusMinus > 0) {
				t.Errorf("%s: tolerance %+v, %v", tm.Key, tol, err)
			}
		}
		if !slices.ContainsFunc(s.Document().Tolerances, func(tol study.Tolerance) bool { return tol.Parameter == "caster" }) {
			t.Errorf("%s: no tolerance of the caster", tm.Key)
		}
	}
}

func TestEditYieldBeginsWithTheUsualLimit(t *testing.T) {
	s := open(t)
	if err := s.Edit("none", "", func(d *study.Document) { d.Yield = nil }); err != nil {
		t.Fatal(err)
	}
	if err := s.EditYield(func(*study.Yield) {}); err != nil {
		t.Fatal(err)
	}
	const rounded = 0.005 // deg: the limit is written to a hundredth
	if got := s.Document().Yield.Limit; !(math.Abs(got-0.1194) <= rounded) {
		t.Errorf("limit = %g deg, want 1/32 in over 15 in, 0.1194", got)
	}
}

// TestShowBand shows the spread of a series about the target, in radians by mm.
func TestShowBand(t *testing.T) {
	desk := deskWith(t)
	name := desk.Session.Document().Candidates[1].Name
	desk.ShowBand(&engine.ToleranceResult{Candidate: name, Positions: []engine.TolerancePosition{
		{Side: "left", Travel: -50, Low: -0.1, High: 0.3}, {Side: "left", Travel: 50, Low: -0.2, High: 0.2},
	}})
	if len(desk.View.Bands) != 1 {
		t.Fatalf("%d bands, want that of the left wheel", len(desk.View.Bands))
	}
	b := desk.View.Bands[0]
	if b.Car != 2 || b.Side != solver.Left || !slices.Equal(b.Travel, []float64{-50, 50}) {
		t.Errorf("band of car %d, %s, at %v", b.Car, b.Side, b.Travel)
	}
	const tolerance = 1e-12 // rad: degrees turned into radians
	if want := solver.Deg(0.3).Radians(); math.Abs(b.High[0]-want) > tolerance {
		t.Errorf("upper edge = %g rad, want %g", b.High[0], want)
	}
}
