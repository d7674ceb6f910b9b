package report

import (
	"toewright/internal/engine"
	"toewright/internal/study"
)

// Sheet is all that stands on a bench sheet, as the engine answered: lengths in the
// study's units, angles in degrees.
type Sheet struct {
	Study   *study.Document
	Version string
	Date    string // empty leaves a line to write on
	Paper   Paper

	Candidate string
	Yardstick string

	Arm *engine.ArmResult
	// Cars are the yardstick and the candidate; one alone where they are the same car.
	Cars []Car
	// Travels are those of the table, round in the units shown.
	Travels []float64
	// Window is what figures are judged over, as limits and tolerances are.
	Window engine.Window
	// Target is the wanted toe change over it, nil where it is flat.
	Target *engine.TargetCurves

	Limits    []engine.LimitResult
	Tolerance *engine.ToleranceResult // nil where the study has no tolerances
	Fit       *engine.FitResult       // nil where the study has no readings
	// Loads are those of the sheet's car, nil where the study states none, and LoadsBefore
	// those of the yardstick where that is another.
	Loads, LoadsBefore *engine.LoadsResult
	Parts              []study.Part // of the catalogue that make up the candidate
	Card               *Card        // nil of what is no card
	// Series is the record of the cars measured, nil of what is none.
	Series *engine.SeriesResult
	// Omitted says of each part that could not be worked out why.
	Omitted []string
}

// Car is one car of a sheet, each list by side: left, right.
type Car struct {
	Name      string
	Curves    [2]engine.CarSweep // through the study's travel, by its own step
	Rows      [2]engine.CarSweep // through the same, at the table's travels
	Figures   [2]engine.Compared // over the window, with the difference from the yardstick
	Diagnosis [2]*engine.Diagnosed
}

// isBase reports whether a name is that of the car as the file gives it.
func isBase(name string) bool { return name == study.BaseName }

// before returns the yardstick, nil where the sheet is of one car alone.
func (s *Sheet) before() *Car {
	if len(s.Cars) < 2 {
		return nil
	}
	return &s.Cars[0]
}

// after returns the sheet's own car.
func (s *Sheet) after() *Car { return &s.Cars[len(s.Cars)-1] }

// record returns the candidate as the study has it, nil for the base car.
func (s *Sheet) record() *study.Candidate {
	if isBase(s.Candidate) {
		return nil
	}
	return s.Study.Candidate(s.Candidate)
}
