package model_test

import (
	"slices"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

// reading returns a session with runs of one side, the last of which is to go on.
func reading(t *testing.T, side study.Side, direction string, runs ...[]float64) *model.Session {
	t.Helper()
	s := template(t, "double-wishbone-rack")
	err := s.Edit("runs", "", func(d *study.Document) {
		d.Units, d.Readings = study.Inch, nil
		d.Travel = &study.Travel{Bump: 2, Droop: 2, Step: 0.75} // the grid is -2, -1.5, -0.75, 0, 0.75, 1.5, 2
		for i, run := range runs {
			set := study.Reading{Side: side, Base: 15, Values: [][2]float64{}}
			if i == len(runs)-1 {
				set.Direction = direction
			}
			for _, x := range run {
				set.Values = append(set.Values, [2]float64{x, 0})
			}
			d.Readings = append(d.Readings, set)
		}
	})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestNextTravel(t *testing.T) {
	at := func(x float64) *float64 { return &x }
	tests := []struct {
		name, direction string
		before, read    []float64
		last            *float64
		want            float64
		own, none       bool
	}{
		{name: "first", want: -2},
		{name: "first, into droop", direction: "droop", want: 2},
		{name: "after one, the study's next", read: []float64{-2}, last: at(-2), want: -1.5},
		{name: "after one at the top, the one below", read: []float64{2}, last: at(2), want: 1.5},
		{name: "a step of the study goes on along it", read: []float64{-2, -1.5}, last: at(-1.5), want: -0.75, own: true},
		{name: "the spacing of the last two", read: []float64{-2, -1}, last: at(-1), want: 0, own: true},
		{name: "down by it", read: []float64{2, 1}, last: at(1), want: 0, own: true},
		{name: "from the middle up, then on downwards", read: []float64{0, 1, 2}, last: at(2), want: -1, own: true},
		{name: "and down to the end", read: []float64{-1, 0, 1, 2}, last: at(-1), want: -2, own: true},
		{name: "up and down by turns", read: []float64{-1, 0, 1}, last: at(-1), want: -2, own: true},
		{name: "what was read is passed over", read: []float64{-2, -1, 1}, last: at(-1), want: 0, own: true},
		{name: "all are read", read: []float64{-2, -1, 0, 1, 2}, last: at(2), none: true},
		{name: "a run of a direction does not turn back", direction: "bump", read: []float64{0, 1, 2}, last: at(2), none: true},
		{name: "nor one into droop", direction: "droop", read: []float64{0, -1, -2}, last: at(-2), none: true},
		{name: "as far up as it was down", read: []float64{-3, -1.5, 0, 1.5}, last: at(1.5), want: 3, own: true},
		{name: "what is shown alike is read", read: []float64{-2.0001}, last: nil, want: -1.5},
		{name: "all are read, nobody knows in which order", read: []float64{-2, -1, 0, 1, 2}, none: true},
		{name: "a hole, nobody knows in which order", read: []float64{-2, -1, 1, 2}, want: 0, own: true},
		{name: "half read, nobody knows in which order", read: []float64{-1, 0}, want: 1, own: true},
		{name: "half read into droop, nobody knows in which order", direction: "droop", read: []float64{1, 0}, want: -1, own: true},
		{name: "read twice, nobody knows in which order", read: []float64{-2, -1.999}, want: -1.5},
		{name: "read twice is no spacing", read: []float64{-2, -1.999}, last: at(-1.999), want: -1.5},
		{name: "as the run before began", before: []float64{-1, 0, 1}, want: -1, own: true},
		{name: "as it went on", before: []float64{-1, 0.25, 1}, read: []float64{-1}, last: at(-1), want: 0.25, own: true},
		{name: "as it ended", before: []float64{-1, 0, 1}, read: []float64{-1, 0, 1}, last: at(1), none: true},
		{name: "what was left out of it", before: []float64{-1, 0, 1}, read: []float64{-1, 1}, last: at(1), want: 0, own: true},
		{name: "the other way", direction: "droop", before: []float64{-1, 0, 1}, want: 1, own: true},
		{name: "another way than the run before", before: []float64{-1, 0, 1}, read: []float64{-2, -0.5}, last: at(-0.5), want: 1, own: true},
	}
	for _, tt := range tests {
		for _, side := range []study.Side{study.Left, study.Right} {
			lists := [][]float64{slices.Sorted(slices.Values(tt.read))}
			if tt.before != nil {
				lists = slices.Insert(lists, 0, tt.before)
			}
			s := reading(t, side, tt.direction, lists...)
			runs := model.Runs(s.Document())
			run := runs[len(runs)-1]
			got, ok := s.NextTravel(run, run.Rows(s.Document()), tt.last, nil)
			if ok == tt.none || ok && got != (model.Proposal{Travel: tt.want, Own: tt.own}) {
				t.Errorf("%s, %s: got %+v, %t, want %g in, own %t, %t", tt.name, side, got, ok, tt.want, tt.own, !tt.none)
			}
		}
	}
}

// TestNextTravelAsItWasRead follows the order in which the run before was typed, not that in
// which the file lists it.
func TestNextTravelAsItWasRead(t *testing.T) {
	s := reading(t, study.Left, "", []float64{-1, 0, 1}, []float64{0})
	run, last := model.Runs(s.Document())[1], 0.0
	got, ok := s.NextTravel(run, run.Rows(s.Document()), &last, []float64{0, 1, -1})
	if !ok || got.Travel != 1 {
		t.Errorf("got %+v, %t, want 1 in", got, ok)
	}
}
