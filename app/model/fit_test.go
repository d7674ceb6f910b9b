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

// TestTakeFitRefusesAnotherStudy changes the study after the fit.
func TestTakeFitRefusesAnotherStudy(t *testing.T) {
	s, r := fitted(t)
	of := s.Document()
	if err := s.Edit("name", "", func(d *study.Document) { d.Name = "changed since" }); err != nil {
		t.Fatal(err)
	}
	changed := s.Document()
	if err := s.TakeFit(of, r); err == nil {
		t.Error("the fit of an older study was taken")
	}
	if s.Document() != changed {
		t.Error("the study changed all the same")
	}
}
