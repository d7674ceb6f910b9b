package model_test

import (
	"os"
	"path/filepath"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

func open(t testing.TB) *model.Session {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("..", "..", "testdata", "cases", "dw01_saloon_rear_steer.json"))
	if err != nil {
		t.Fatal(err)
	}
	d, err := study.Decode(studyOf(t, b))
	if err != nil {
		t.Fatal(err)
	}
	s := model.Open(d)
	if err := s.Cars().Err; err != nil {
		t.Fatal(err)
	}
	return s
}

func TestUndoRedo(t *testing.T) {
	s := open(t)
	first := s.Document()
	i, err := s.AddCandidate(study.Candidate{Name: "spacer"})
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range []float64{-1, -2, -3} {
		if err := s.SetChange(i, "tieRodOuterHeight", v, "drag"); err != nil {
			t.Fatal(err)
		}
	}
	s.EndRun()
	if err := s.SetChange(i, "tieRodOuterHeight", -8, "drag"); err != nil {
		t.Fatal(err)
	}
	if got := s.Cars().At(i).Figures[0].RMS; !(got < s.Cars().Base().Figures[0].RMS) {
		t.Errorf("rms %v is not better than the base car's %v", got, s.Cars().Base().Figures[0].RMS)
	}
	for _, want := range []float64{-3, 0} {
		s.Undo()
		if got := s.Document().Candidates[0].Changes["tieRodOuterHeight"]; got != want {
			t.Errorf("after undo %g, want %g", got, want)
		}
	}
	if s.Undo(); s.Document() != first || s.CanUndo() != "" {
		t.Error("undo does not lead back to the first document")
	}
	for s.Redo() != "" {
	}
	if got := s.Document().Candidates[0].Changes["tieRodOuterHeight"]; got != -8 {
		t.Errorf("after redo %g, want -8", got)
	}
}

func TestEditThatCouldNotBeOpenedIsRefused(t *testing.T) {
	s := open(t)
	before := s.Document()
	err := s.Edit("break", "", func(d *study.Document) { d.Vehicle.Wheelbase = -1 })
	if err == nil || s.Document() != before || s.CanUndo() != "" {
		t.Errorf("a wheelbase of -1 gives %v; the study has changed: %t", err, s.Document() != before)
	}
}

func TestCandidateLimit(t *testing.T) {
	s := open(t)
	for range model.MaxCandidates {
		if _, err := s.Duplicate(0); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := s.Duplicate(0); err == nil {
		t.Error("a ninth candidate was added")
	}
	names := map[string]bool{}
	for _, k := range s.Document().Candidates {
		if names[k.Name] {
			t.Errorf("two candidates are called %q", k.Name)
		}
		names[k.Name] = true
	}
}
