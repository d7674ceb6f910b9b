package model_test

import (
	"bytes"
	"encoding/csv"
	"testing"

	"toewright/app/model"
	"toewright/internal/plot"
	"toewright/solver"
)

func TestCurvesCSV(t *testing.T) {
	s := openThree(t)
	rows, err := csv.NewReader(bytes.NewReader(model.CurvesCSV(s.Document(), s.Cars()))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if got, want := len(rows), len(s.Cars().Travels)+1; got != want {
		t.Errorf("%d rows, want %d", got, want)
	}
	const impossible = 5 // column of the left side of the third car
	for _, row := range rows[1:] {
		if row[1] == "" || row[impossible] != "" {
			t.Errorf("row %q: want numbers of the base car, none of the one that cannot be solved", row)
		}
	}
}

func TestSheetTravels(t *testing.T) {
	s := open(t)
	list := model.SheetTravels(s.Document(), s.Cars())
	if list[0] != 80 || list[len(list)-1] != -80 || len(list) != 17 {
		t.Errorf("travels %v, want each 10 mm from 80 to -80", list)
	}
}

func TestChartOfAFlatCurveIsNotItsNoise(t *testing.T) {
	s := open(t)
	n := model.NumbersOf(s.Document())
	c := model.CurvesChart(n, s.Cars(), solver.Left, nil, plot.Box(0, 0, 100, 100), 10)
	if c.X.Span() < 0.1 {
		t.Errorf("without curves the chart spans %g deg, want 0.1 at least", c.X.Span())
	}
}
