package model_test

import (
	"math"
	"testing"

	"toewright/app/demo"
	"toewright/app/model"
	"toewright/internal/engine"
	"toewright/internal/study"
)

var bothSides = []study.Side{study.Left, study.Right}

// mine makes all numbers of a study the user's own.
func mine(d *study.Document) *study.Document {
	d.Sources = nil
	return d
}

// sdsBut returns the standard deviations of all points of both sides but one, by side and name.
func sdsBut(d *study.Document, name string, sides ...study.Side) map[string]string {
	out := map[string]string{}
	for _, side := range bothSides {
		for _, p := range model.PointRows(d, side) {
			if p.Name != name || p.Side != "" && p.Side != sides[0] && p.Side != sides[len(sides)-1] {
				out[string(side)+" "+p.Name] = model.PointSD(d, &p)
			}
		}
	}
	return out
}

// TestTypePointSD states how well one point is known, of every car, mirrored and with a right side
// of its own: that point's is what was typed, all others keep theirs, and the study opens again.
func TestTypePointSD(t *testing.T) {
	for _, template := range study.Templates() {
		for _, own := range []bool{false, true} {
			s := model.Open(mine(template.Start()))
			if own {
				if err := s.OwnRight(); err != nil {
					continue // both sides have their own points as it is
				}
			}
			d := s.Document()
			for _, side := range bothSides {
				for i, p := range model.PointRows(d, side) {
					if !model.HasPointSD(d, &p) {
						continue
					}
					sides := []study.Side{p.Side}
					if d.Suspension.Right == nil {
						sides = bothSides
					}
					before := sdsBut(s.Document(), p.Name, sides...)
					typed := [][2]string{{"0.75", "0.75"}, {"0", ""}, {"1 1/2", "1.5"}}[i%3]
					if err := s.TypePointSD(p, typed[0]); err != nil {
						t.Fatalf("%s, %s %s: %v", template.Key, side, p.Name, err)
					}
					now := s.Document()
					if got := model.PointSD(now, &p); got != typed[1] {
						t.Errorf("%s, own right %v, %s %s: typed %s, is %q", template.Key, own, side, p.Name, typed[0], got)
					}
					for key, sd := range sdsBut(now, p.Name, sides...) {
						if sd != before[key] {
							t.Errorf("%s, own right %v: %s %s typed, and %s goes from %q to %q", template.Key, own, side, p.Name, key, before[key], sd)
						}
					}
				}
			}
			if err := s.ForgetSDs(); err != nil || s.Document().Priors != nil {
				t.Errorf("%s: error %v, priors %v", template.Key, err, s.Document().Priors)
			}
		}
	}
	s := model.Open(mine(study.Template{Key: "double-wishbone-rack"}.Start()))
	p := model.PointRows(s.Document(), study.Left)[0]
	for _, bad := range []string{"-1", "wide", "1e999"} {
		if err := s.TypePointSD(p, bad); err == nil || s.Document().Priors != nil {
			t.Errorf("%q is taken", bad)
		}
	}
}

// TestUsualSDsFitAlike states what is usual of one point, which states it of all: the fit is what
// it was, but for rounding.
func TestUsualSDsFitAlike(t *testing.T) {
	s := model.Open(mine(demo.Document()))
	fit := func() *engine.FitResult {
		t.Helper()
		r, err := engine.Fit(t.Context(), s.Document(), engine.FitOptions{})
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	before := fit()
	p := model.PointRows(s.Document(), study.Left)[0]
	if err := s.TypePointSD(p, model.PointSD(s.Document(), &p)); err != nil {
		t.Fatal(err)
	}
	after := fit()
	if math.Abs(before.ChiSquare-after.ChiSquare) > 1e-9*before.ChiSquare || len(before.Fitted) != len(after.Fitted) {
		t.Errorf("chi square %g and %d values, were %g and %d", after.ChiSquare, len(after.Fitted), before.ChiSquare, len(before.Fitted))
	}
}
