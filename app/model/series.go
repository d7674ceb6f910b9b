package model

import (
	"errors"
	"fmt"
	"slices"

	"toewright/internal/study"
)

// NextCar returns a name for the next car of the series that none of them has.
func NextCar(d *study.Document) string {
	for n := len(d.Series) + 1; ; n++ {
		if name := fmt.Sprintf("no. %d", n); !carTaken(d, name) {
			return name
		}
	}
}

// carTaken reports whether a car of the series has a name.
func carTaken(d *study.Document, name string) bool {
	return slices.ContainsFunc(d.Series, func(m study.MeasuredCar) bool { return m.Car == name })
}

var (
	errNoRuns      = errors.New("the run sheet is empty: read the car first")
	errNobodysRuns = errors.New("there are runs on the run sheet that are a template's, and no car's: take them out first")
	errCarTaken    = errors.New("a car of the series is called so already: give it a name of its own")
)

// KeepCar moves the runs of the run sheet to a car of the series, which leaves the sheet to
// the next car.
func (s *Session) KeepCar(name, date string) error {
	switch {
	case len(filled(s.doc.Readings)) == 0:
		return errNoRuns
	case BorrowedOf(s.doc, "readings").From > 0:
		return errNobodysRuns
	case name == "" || carTaken(s.doc, name):
		return errCarTaken
	}
	return s.Edit("keep a car of the series", "", func(d *study.Document) {
		d.Series = append(d.Series, study.MeasuredCar{Car: name, Date: date, Readings: filled(d.Readings)})
		d.Readings = nil
	})
}

// ReopenCar moves the runs of a car of the series back to the run sheet, after what is there.
func (s *Session) ReopenCar(i int) error {
	return s.Edit("open a car of the series", "", func(d *study.Document) {
		d.Readings = append(d.Readings, d.Series[i].Readings...)
		d.Series = slices.Delete(d.Series, i, i+1)
	})
}

// RemoveCar takes a car out of the series.
func (s *Session) RemoveCar(i int) error {
	return s.Edit("take a car out of the series", "", func(d *study.Document) { d.Series = slices.Delete(d.Series, i, i+1) })
}
