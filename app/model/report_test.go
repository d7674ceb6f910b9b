package model_test

import (
	"bytes"
	"encoding/csv"
	"errors"
	"math"
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/plot"
	"toewright/internal/study"
	"toewright/solver"
)

// displays are ways to show a study, each unlike the file's own.
var displays = map[string]*study.Display{
	"as the file":              nil,
	"inches":                   {Units: study.Inch},
	"fractions and indicators": {Units: study.Inch, Fraction: 64, Toe: "indicators", Base: 381},
	"mm over a plate":          {Units: study.Millimetre, Toe: "plate", Base: 500},
}

// TestCurvesCSV reads the table of curves back by its titles, whatever is shown and
// whatever a car is called.
func TestCurvesCSV(t *testing.T) {
	for name, display := range displays {
		t.Run(name, func(t *testing.T) {
			s := openThree(t)
			if err := s.SetDisplay("units", func(v *study.Display) {
				if display != nil {
					*v = *display
				}
			}); err != nil {
				t.Fatal(err)
			}
			n := model.NumbersOf(s.Document())
			rows, err := csv.NewReader(bytes.NewReader(model.CurvesCSV(n, s.Cars()))).ReadAll()
			if err != nil {
				t.Fatal(err)
			}
			if got, want := len(rows), len(s.Cars().Travels)+1; got != want {
				t.Errorf("%d rows, want %d", got, want)
			}
			if rows[0][0] != "travel ("+n.LengthUnit()+")" || !strings.HasSuffix(rows[0][1], ", left ("+n.ToeUnit()+")") {
				t.Errorf("titles %q", rows[0][:2])
			}
			const impossible = 5 // column of the left side of the third car
			for i, row := range rows[1:] {
				if row[1] == "" || row[impossible] != "" {
					t.Errorf("row %q: want numbers of the base car, none of the one that cannot be solved", row)
				}
				travel, err1 := n.ParseLength(row[0])
				deg, err2 := n.ParseToe(row[1])
				want, _ := s.Cars().Base().ToeChange(solver.Left, s.Cars().Travels[i])
				if err := errors.Join(err1, err2); err != nil || math.Abs(travel-s.Cars().Travels[i]) > 0.0128 || math.Abs(deg-want.Degrees()) > 1e-5 {
					t.Errorf("row %q is travel %g, toe %g deg, %v; want %g and %g", row[:2], travel, deg, err, s.Cars().Travels[i], want.Degrees())
				}
			}
		})
	}
}

// TestCurvesCSVHasNoFormula names cars as formulas of a spreadsheet start.
func TestCurvesCSVHasNoFormula(t *testing.T) {
	s := openThree(t)
	for _, name := range []string{"=1+1", "+1", "@a", "-1", "\tb"} {
		if err := s.Edit("name", "", func(d *study.Document) { d.Candidates[0].Name = name }); err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(bytes.NewReader(model.CurvesCSV(model.NumbersOf(s.Document()), s.Cars()))).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(strings.Join(rows[0], "|"), name) {
			t.Errorf("no column is of %q: %q", name, rows[0])
		}
		for _, title := range rows[0] {
			if strings.ContainsAny(title[:1], "=+@-\t") {
				t.Errorf("a title is %q", title)
			}
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
