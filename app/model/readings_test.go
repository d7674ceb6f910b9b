package model_test

import (
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

func TestRun(t *testing.T) {
	s := template(t, "double-wishbone-rack")
	at, err := s.AddRun()
	if err == nil {
		err = s.SetParts(model.Runs(s.Document())[at], s.Cars().At(1))
	}
	if err != nil {
		t.Fatal(err)
	}
	k := model.Keypad{Run: at}
	for _, keys := range []string{"10|1|2|", "±10|3||", "10|1.5||"} {
		k.Settle(s)
		k.Go(model.TravelField)
		k.Type(model.TravelField, "")
		if typed(s, &k, keys); k.Asked {
			k.Next(s)
		}
		if k.Fault != "" {
			t.Fatal(k.Fault)
		}
	}
	rows := model.Runs(s.Document())[at].Rows(s.Document())
	if len(rows) != 2 || rows[0].Travel != -10 || rows[0].Values[1] != nil || *rows[1].Values[0] != 1.5 || *rows[1].Values[1] != 2 {
		t.Fatalf("rows %+v, want -10 (3, none) and 10 (1.5, 2)", rows)
	}
	if err := s.RemoveReading(model.Runs(s.Document())[at], 10); err != nil {
		t.Fatal(err)
	}
	if rows := model.Runs(s.Document())[at].Rows(s.Document()); len(rows) != 1 {
		t.Errorf("rows %+v, want one", rows)
	}
	before := len(model.Runs(s.Document()))
	if err := s.RemoveRun(model.Runs(s.Document())[at]); err != nil {
		t.Fatal(err)
	}
	if got := len(model.Runs(s.Document())); got != before-1 {
		t.Errorf("%d runs, want %d", got, before-1)
	}
}

// TestBesideALoneSide begins a run, and reads the side that a run of the file does not have:
// each reading stands in its own run.
func TestBesideALoneSide(t *testing.T) {
	for _, lone := range []study.Side{study.Left, study.Right} {
		s := template(t, "double-wishbone-rack")
		base := s.Cars().At(0)
		err := s.Edit("lone side", "", func(d *study.Document) {
			d.Readings = []study.Reading{{Side: lone, Gauge: "indicators", Base: 300, Repeatability: 0.05, Note: base.Name, Values: [][2]float64{{0, 1}}}}
		})
		if err != nil {
			t.Fatal(err)
		}
		if at, err := s.AddRun(); at != 1 || err != nil {
			t.Fatalf("%s: the new run is run %d, %v, want 1", lone, at, err)
		}
		x, y := 2.0, 3.0
		if err := s.AddReading(model.Runs(s.Document())[0], &model.ReadingRow{Travel: 0, Left: &x, Right: &y}); err != nil {
			t.Fatal(err)
		}
		runs := model.Runs(s.Document())
		if len(runs) != 2 {
			t.Fatalf("%s: %d runs, want 2", lone, len(runs))
		}
		rows := runs[0].Rows(s.Document())
		if len(rows) != 1 || *rows[0].Values[0] != x || *rows[0].Values[1] != y || len(runs[1].Rows(s.Document())) != 0 {
			t.Errorf("%s: rows %+v, want the two readings in the first run alone", lone, rows)
		}
	}
}
