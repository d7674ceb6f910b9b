package model

import (
	"math"
	"strings"
	"testing"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// TestTapeIsTaken enters measures of every kind, corrects one, takes one out, and sees a trial
// leave the document alone.
func TestTapeIsTaken(t *testing.T) {
	s := Open(study.Template{Key: "double-wishbone-rack"}.Document())
	if err := s.SetMarks(); err != nil {
		t.Fatal(err)
	}
	outer := s.Document().Suspension.Left.Points["tieRodOuter"]
	lower, a := s.Document().Suspension.Left.Points["lowerBallJoint"], s.Document().Measured.Marks["A"]
	reads := []float64{math.Hypot(math.Hypot(lower[0]-a[0], lower[1]-a[1]), lower[2]-a[2]), outer[2], outer[1], outer[0]}
	for i, of := range []engine.NextTape{
		{Kind: "length", From: "A", Of: "left.lowerBallJoint"}, {Kind: "height", Of: "left.tieRodOuter"},
		{Kind: "side", Of: "left.tieRodOuter"}, {Kind: "station", Of: "left.tieRodOuter"},
	} {
		trial := WithMeasure(s.Document(), &of, 123)
		if len(s.Document().Measures()) != i || len(trial.Measures()) != i+1 {
			t.Fatalf("%s: %d measures, %d on trial, want %d and %d", of.Kind, len(s.Document().Measures()), len(trial.Measures()), i, i+1)
		}
		if err := s.TakeMeasure(&of, reads[i]); err != nil {
			t.Fatal(err)
		}
	}
	rows := TapeRows(s.Document(), nil)
	if len(rows) != 4 || rows[0].Of != "mark A to lower ball joint" || rows[1].Says != "" || rows[1].SD != "1.00" {
		t.Fatalf("rows %+v", rows)
	}
	if err := s.SetMeasure(rows[3].Measure, outer[0]+1); err != nil {
		t.Fatal(err)
	}
	if err := s.DropMeasure(rows[1].Measure); err != nil {
		t.Fatal(err)
	}
	if m := s.Document().Measured; len(m.Heights) != 0 || m.Stations[0].Value != outer[0]+1 || m.MarkSD != 1 || len(m.Marks) != 6 {
		t.Errorf("measured %+v", m)
	}
	if err := s.SkipMeasure(&engine.NextTape{Key: "heights left.tieRodOuter"}); err != nil {
		t.Fatal(err)
	}
	l, err := engine.Locate(t.Context(), s.Document(), engine.LocateOptions{Curve: true})
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range l.Next {
		if n.Key == "heights left.tieRodOuter" {
			t.Error("what cannot be reached is asked for again")
		}
	}
	d := &Desk{Session: s}
	if d.ShowTape(l); len(d.View.Bands) != 2 || len(d.View.Bands[0].Travel) < 5 {
		t.Errorf("%d bands", len(d.View.Bands))
	}
	if err := s.TakeLocation(l); err != nil {
		t.Fatal(err)
	}
	if tag := SourceTag(s.Document(), "left.tieRodOuter"); !strings.Contains(tag, "tape") {
		t.Errorf("the outer ball is from %q, want by tape", tag)
	}
}

// TestOnlyTwoLengths tapes arm and tie rod alone on a template: the curve has a band that is
// finite and far from enough for a spacer.
func TestOnlyTwoLengths(t *testing.T) {
	for _, template := range study.Templates() {
		s := Open(template.Document())
		list := TwoLengths(s.Document(), s.Cars().Design)
		if strings.HasPrefix(template.Key, "double-wishbone") && len(list) != 2 {
			t.Errorf("%s: %d lengths, want 2", template.Key, len(list))
		}
		for i := range list {
			if err := s.TakeOne(&list[i], 300); err != nil {
				t.Fatalf("%s: %v", template.Key, err)
			}
			if err := s.TakeOne(&list[i], 150+150*float64(1-i)); err != nil { // typed anew
				t.Fatalf("%s: %v", template.Key, err)
			}
			l, err := engine.Locate(t.Context(), s.Document(), engine.LocateOptions{})
			if err != nil {
				t.Fatalf("%s: %v", template.Key, err)
			}
			if len(s.Document().Measures()) != i+1 {
				t.Errorf("%s: %d measures, want %d", template.Key, len(s.Document().Measures()), i+1)
			}
			toe := l.Toe["left"]
			if toe.Problem != "" {
				continue
			}
			if !(toe.Droop.SD > 0.1) || !(toe.Droop.SD < 10) || l.Spacer == nil || l.Spacer.Narrow {
				t.Errorf("%s: toe %+v, spacer %+v", template.Key, toe, l.Spacer)
			}
		}
	}
}
