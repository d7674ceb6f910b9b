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
		{"worst first", model.Order{ByFigure: true, Figure: model.PeakFigure, Down: true}, []string{"spoiled", "base", "mended", "impossible"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var got []string
			for _, r := range model.Table(cars, 0, tt.by) {
				got = append(got, r.Name)
			}
			if !slices.Equal(got, tt.want) {
				t.Errorf("got %q, want %q", got, tt.want)
			}
		})
	}
}

func TestTableDifferences(t *testing.T) {
	cars := openThree(t).Cars()
	const mended = 1
	rows := model.Table(cars, mended, model.Order{})
	for _, f := range model.TableFigures {
		if got := rows[mended].Difference(f, solver.Left); got != 0 {
			t.Errorf("%s of the yardstick differs from itself by %g", f.Label(), got)
		}
		want := f.Of(&cars.Base().Figures[solver.Left]) - f.Of(&cars.At(mended).Figures[solver.Left])
		if got := rows[0].Difference(f, solver.Left); got != want {
			t.Errorf("%s of the base car differs by %g, want %g", f.Label(), got, want)
		}
	}
	if rows[0].Yardstick() || !rows[mended].Yardstick() {
		t.Error("the wrong car is marked as the yardstick")
	}
}

func TestTableFallsBackOnTheBaseCar(t *testing.T) {
	if rows := model.Table(openThree(t).Cars(), 17, model.Order{}); !rows[0].Yardstick() {
		t.Error("the base car is no yardstick where the one asked for is gone")
	}
}

func TestImpossibleCarHasNoNumbers(t *testing.T) {
	s := openThree(t)
	n := model.NumbersOf(s.Document())
	row := model.Table(s.Cars(), 0, model.Order{})[2]
	if got := n.DifferenceNumber(model.RMSFigure, row.Difference(model.RMSFigure, solver.Left)); got != "–" {
		t.Errorf("the difference of a car that cannot be solved reads %q, want –", got)
	}
	if len(model.Spark(row.Car, solver.Left).X) != 0 {
		t.Error("a car that cannot be solved has a curve")
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
