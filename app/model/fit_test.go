package model_test

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"testing"

	"toewright/app/model"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// fitted opens the study of a simulated car and fits it.
func fitted(t *testing.T) (*model.Session, *engine.FitResult) {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("..", "..", "testdata", "cases", "fit01.json"))
	if err != nil {
		t.Fatal(err)
	}
	d, err := study.Decode(studyOf(t, b))
	if err != nil {
		t.Fatal(err)
	}
	r, err := engine.Fit(context.Background(), d, engine.FitOptions{})
	if err != nil {
		t.Fatal(err)
	}
	return model.Open(d), r
}

// TestTakeFit takes the fitted car: every point lies where the fit moved it, and one undo
// puts the measured car back.
func TestTakeFit(t *testing.T) {
	s, r := fitted(t)
	measured := s.Document()
	if err := s.TakeFit(measured, r); err != nil {
		t.Fatal(err)
	}
	if err := s.Cars().Err; err != nil {
		t.Fatalf("the fitted car: %v", err)
	}
	moved := 0.0
	before := measured.Points()
	for _, p := range s.Document().Points() {
		for _, q := range before {
			if p.Name == q.Name && p.Side == q.Side {
				moved = max(moved, math.Abs(p.Place[2]-q.Place[2]))
			}
		}
	}
	if !(moved > 0.01) {
		t.Errorf("the points moved by up to %g mm in height, want some to have moved", moved)
	}
	if label := s.Undo(); label != "take the fitted car" || s.Document() != measured {
		t.Errorf("undid %q, want the measured car back", label)
	}
}

// TestTakeFitRefusesAnotherCar changes the study after the fit: one of another car or of
// other readings is refused, one that differs in what no fit hangs on is taken.
func TestTakeFitRefusesAnotherCar(t *testing.T) {
	tests := []struct {
		name   string
		change func(*study.Document)
		taken  bool
	}{
		{"name", func(d *study.Document) { d.Name = "changed since" }, true},
		{"a part on the shelf", func(d *study.Document) { d.Catalogue = append(d.Catalogue, study.Part{Slot: "s", Name: "n"}) }, true},
		{"a candidate", func(d *study.Document) { d.Candidates = append(d.Candidates, study.Candidate{Name: "n"}) }, true},
		{"a run without readings", func(d *study.Document) {
			d.Readings = append(d.Readings, study.Reading{Side: study.Left, Base: 300, Values: [][2]float64{}})
		}, true},
		{"a point", func(d *study.Document) {
			p := d.Points()[2]
			p.Place[2] += 1
			d.SetPoint(p)
		}, false},
		{"a reading", func(d *study.Document) { d.Readings[0].Values[0][1] += 0.1 }, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s, r := fitted(t)
			of := s.Document()
			if err := s.Edit(tt.name, "", tt.change); err != nil {
				t.Fatal(err)
			}
			changed := s.Document()
			use := model.FitUseOf(changed, r, of)
			if err := s.TakeFit(of, r); (err == nil) != tt.taken {
				t.Errorf("taken: %t, %v", err == nil, err)
			}
			if (use == model.FitUnused) != tt.taken || use == model.NothingRead {
				t.Errorf("said beforehand: %q", use)
			}
			if !tt.taken && s.Document() != changed {
				t.Error("the study changed all the same")
			}
			if tt.taken && model.FitUseOf(s.Document(), r, of) != model.FitTaken {
				t.Errorf("said afterwards: %q", model.FitUseOf(s.Document(), r, of))
			}
		})
	}
}

// TestFitUse: a study says of its readings whether they count, and an example's count for
// nothing.
func TestFitUse(t *testing.T) {
	s, _ := fitted(t)
	if use := model.FitUseOf(s.Document(), nil, nil); use != model.FitMissing {
		t.Errorf("readings without a fit: %q", use)
	}
	if use := model.FitUseOf(template(t, "double-wishbone-rack").Document(), nil, nil); use != model.NothingRead {
		t.Errorf("the readings of an example: %q", use)
	}
	if use := model.FitUseOf(study.Templates()[0].Start(), nil, nil); use != model.NothingRead || use.String() != "" {
		t.Errorf("a new study: %q", use)
	}
}
