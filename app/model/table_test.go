package model_test

import (
	"slices"
	"testing"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// openThree opens a study with a mended car, an impossible one and a spoiled one
// beside the base car.
func openThree(t *testing.T) *model.Session {
	t.Helper()
	s := open(t)
	for _, k := range []study.Candidate{
		{Name: "mended", Changes: study.Changes{"tieRodOuterHeight": -8}},
		{Name: "impossible", Changes: study.Changes{"rideHeight": -5000}},
		{Name: "spoiled", Changes: study.Changes{"tieRodOuterHeight": 30}},
	} {
		if _, err := s.AddCandidate(k); err != nil {
			t.Fatal(err)
		}
	}
	return s
}

func TestTableSorts(t *testing.T) {
	cars := openThree(t).Cars()
	tests := []struct {
		name string
		by   model.Order
		want []string
	}{
		{"as in the study", model.Order{}, []string{"base", "mended", "impossible", "spoiled"}},
		{"best first", model.Order{ByFigure: true, Figure: model.RMSFigure}, []string{"mended", "base", "spoiled", "impossible"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var got []string
			for _, r := range model.Table(cars, tt.by) {
				got = append(got, r.Name)
			}
			if !slices.Equal(got, tt.want) {
				t.Errorf("got %q, want %q", got, tt.want)
			}
		})
	}
}

// TestFiguresAreOfTheSearchWindow checks that the numbers of a table are those that
// a search reports, where its window is not that of the picture.
func TestFiguresAreOfTheSearchWindow(t *testing.T) {
	s := open(t)
	wide := s.Cars().Base().Figures[0]
	err := s.Edit("narrow", "", func(d *study.Document) {
		d.Search = &study.Search{Window: &study.Travel{Bump: 20, Droop: 10, Step: 5}}
	})
	if err != nil {
		t.Fatal(err)
	}
	narrow := s.Cars().Base().Figures[0]
	if !(narrow.PeakToPeak < wide.PeakToPeak) {
		t.Errorf("range %v over 20 up and 10 down is not less than %v", narrow.PeakToPeak, wide.PeakToPeak)
	}
	if got, want := len(s.Cars().Base().Curves[0].Positions), len(s.Cars().Travels); got != want {
		t.Errorf("the picture has %d positions, want all %d", got, want)
	}
}

func TestReachText(t *testing.T) {
	n := model.Numbers{Style: number.Style{Units: study.Millimetre}}
	tests := []struct {
		name  string
		reach solver.Reach
		want  string
	}{
		{"whole", solver.Reach{}, "whole window"},
		{"bump", solver.Reach{Bump: 43.2, BumpEnds: true, BumpLink: "upper arm"}, "43.2 mm bump: upper arm locks"},
		{"droop", solver.Reach{Droop: 61, DroopEnds: true, DroopLink: "tie rod"}, "61 mm droop: tie rod locks"},
		{"both", solver.Reach{Bump: 40, Droop: 50, BumpEnds: true, DroopEnds: true, BumpLink: "upper arm", DroopLink: "tie rod"}, "40 mm bump, 50 mm droop: upper arm locks"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := n.ReachText(&tt.reach); got != tt.want {
				t.Errorf("got %q, want %q", got, tt.want)
			}
		})
	}
}
