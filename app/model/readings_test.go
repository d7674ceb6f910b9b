package model_test

import (
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

func TestRun(t *testing.T) {
	s := template(t, "double-wishbone-rack")
	at, err := s.AddRun(s.Cars().At(1))
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

// TestNextTravelOddStep: a run by a step that is no part of the window calls at 0 and at
// both ends, either way.
func TestNextTravel(t *testing.T) {
	at := func(x float64) *float64 { return &x }
	travel := &study.Travel{Bump: 2, Droop: 2, Step: 0.75} // the grid is -2, -1.5, -0.75, 0, 0.75, 1.5, 2
	tests := []struct {
		name, direction string
		read            []float64
		last            *float64
		want            float64
		none            bool
	}{
		{name: "first, into bump", direction: "bump", want: -2},
		{name: "next, into bump", last: at(0.75), read: []float64{0.75}, want: 1.5},
		{name: "the end of the window belongs to it", last: at(1.5), read: []float64{1.5}, want: 2},
		{name: "first, into droop", direction: "droop", want: 2},
		{name: "next, into droop", direction: "droop", last: at(0.75), read: []float64{0.75}, want: 0},
		{name: "what was read is passed over", read: []float64{-2, -1.5, 0}, want: -0.75},
		{name: "what is shown alike is read", read: []float64{-2.0001}, want: -1.5},
		{name: "none behind the end", last: at(2), none: true},
		{name: "none into droop", direction: "droop", last: at(-2), none: true},
		{name: "off the grid", last: at(0.1), want: 0.75},
	}
	for _, tt := range tests {
		for side, sets := range [][2]int{{0, -1}, {-1, 0}} {
			d := &study.Document{Units: study.Inch, Travel: travel, Readings: []study.Reading{{Direction: tt.direction}}}
			for _, x := range tt.read {
				d.Readings[0].Values = append(d.Readings[0].Values, [2]float64{x, 0})
			}
			if got, ok := (model.Run{Sets: sets}).NextTravel(d, tt.last); got != tt.want || ok == tt.none {
				t.Errorf("%s, side %d: got %g in, %t, want %g in, %t", tt.name, side, got, ok, tt.want, !tt.none)
			}
		}
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
		if at, err := s.AddRun(base); at != 1 || err != nil {
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
