package model_test

import (
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

// typed presses keys, each letter one, and goes on to the next field at every |.
func typed(t *testing.T, k *model.Keypad, n model.Numbers, keys string) *model.ReadingRow {
	t.Helper()
	var row *model.ReadingRow
	for _, key := range keys {
		if key != '|' {
			k.Press(string(key))
			continue
		}
		var err error
		if row, err = k.Next(n); err != nil {
			t.Fatalf("%q: %v", keys, err)
		}
	}
	return row
}

func TestKeypad(t *testing.T) {
	mm, in := model.Numbers{Units: study.Millimetre}, model.Numbers{Units: study.Inch}
	of := func(x float64) *float64 { return &x }
	tests := []struct {
		name    string
		numbers model.Numbers
		keys    string
		want    model.ReadingRow
	}{
		{"both sides", mm, "10|1.25|±1.3|", model.ReadingRow{Travel: 10, Left: of(1.25), Right: of(-1.3)}},
		{"one side", mm, "±20||0.5|", model.ReadingRow{Travel: -20, Right: of(0.5)}},
		{"sign twice", mm, "5±±|1||", model.ReadingRow{Travel: 5, Left: of(1)}},
		{"corrected", mm, "12⌫5|2⌫⌫3||", model.ReadingRow{Travel: 15, Left: of(3)}},
		{"fraction of an inch", in, "1␣1/2|1/32||", model.ReadingRow{Travel: 38.1, Left: of(0.79375)}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := typed(t, &model.Keypad{}, tt.numbers, tt.keys)
			if got == nil || got.Travel != tt.want.Travel || !same(got.Left, tt.want.Left) || !same(got.Right, tt.want.Right) {
				t.Errorf("typed %q: %+v, want %+v", tt.keys, got, tt.want)
			}
		})
	}
}

func same(a, b *float64) bool { return a == nil && b == nil || a != nil && b != nil && *a == *b }

func TestKeypadRefusals(t *testing.T) {
	n := model.Numbers{Units: study.Millimetre}
	tests := []struct {
		name string
		k    model.Keypad
		at   model.ReadingField
	}{
		{"no travel", model.Keypad{}, model.TravelField},
		{"two points", model.Keypad{At: model.LeftField, Texts: [3]string{"5", "1.2.3", ""}}, model.LeftField},
		{"neither side", model.Keypad{At: model.RightField, Texts: [3]string{"5", "", ""}}, model.LeftField},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			row, err := tt.k.Next(n)
			if err == nil || row != nil || tt.k.At != tt.at {
				t.Errorf("Next = %+v, %v at field %d, want an error at field %d", row, err, tt.k.At, tt.at)
			}
		})
	}
}

func TestRun(t *testing.T) {
	s := template(t, "double-wishbone-rack")
	at, err := s.AddRun(s.Cars().At(1))
	if err != nil {
		t.Fatal(err)
	}
	n := model.NumbersOf(s.Document())
	for _, keys := range []string{"10|1|2|", "±10|3||", "10|1.5||"} {
		if err := s.AddReading(model.Runs(s.Document())[at], typed(t, &model.Keypad{}, n, keys)); err != nil {
			t.Fatal(err)
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
func TestNextTravelOddStep(t *testing.T) {
	d := &study.Document{Units: study.Millimetre, Travel: &study.Travel{Bump: 50, Droop: 30, Step: 40},
		Readings: []study.Reading{{Direction: "bump"}, {Direction: "droop"}}}
	for side, want := range [2][]float64{{-30, 0, 40, 50, 90}, {50, 40, 0, -30, -70}} {
		run := model.Run{Sets: [2]int{-1, -1}}
		run.Sets[side] = side
		var last *float64
		for i := range want {
			got := run.NextTravel(d, last)
			if got != want[i] {
				t.Fatalf("run %d: travel %d is %g mm, want %g", side, i, got, want[i])
			}
			last = &got
		}
	}
}

func TestNextTravel(t *testing.T) {
	d := &study.Document{Units: study.Inch, Readings: []study.Reading{{Direction: "bump"}, {Direction: "droop"}}}
	last := 1.0
	tests := []struct {
		name string
		run  model.Run
		last *float64
		want float64
	}{
		{"first, into bump", model.Run{Sets: [2]int{0, -1}}, nil, -50.8},
		{"next, into bump", model.Run{Sets: [2]int{0, -1}}, &last, 31.75},
		{"first, into droop", model.Run{Sets: [2]int{-1, 1}}, nil, 50.8},
		{"next, into droop", model.Run{Sets: [2]int{-1, 1}}, &last, 19.05},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := tt.run.NextTravel(d, tt.last); got != tt.want {
				t.Errorf("got %g mm, want %g mm", got, tt.want)
			}
		})
	}
}
