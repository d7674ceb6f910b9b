package model

import (
	"reflect"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// FitUse says whether the car that answers are of is the one that the readings came from.
type FitUse int

// The ways in which a study stands to its readings.
const (
	NothingRead FitUse = iota // there are no readings of the user's own
	FitUnused                 // a fit is at hand, and the car is still the one that was entered
	FitMissing                // there are readings, and the car was not fitted to them
	FitTaken                  // the car is the fitted one
)

// FitUseOf returns how a study stands to its readings, with what the last fit found and
// the study that it is of; nil for none.
func FitUseOf(d *study.Document, r *engine.FitResult, of *study.Document) FitUse {
	switch {
	case r != nil && FitsStill(of, d):
		return FitUnused
	case isFitted(d):
		return FitTaken
	case hasOwnReadings(d):
		return FitMissing
	}
	return NothingRead
}

// String says it in a line, "" where there is nothing to say.
func (u FitUse) String() string {
	switch u {
	case FitUnused:
		return "This is of the car as entered, not of the one that fits your readings."
	case FitMissing:
		return "This is of the car as entered: your readings count once the car is fitted to them."
	case FitTaken:
		return "This is of the car as fitted to the readings."
	}
	return ""
}

// FitsStill reports whether what a fit found of one study holds for another: both have the
// same car and the same readings, whatever else was changed.
func FitsStill(of, d *study.Document) bool {
	return of == d || of != nil && reflect.DeepEqual(fitted(of), fitted(d))
}

// fitted returns what a fit is made of.
func fitted(d *study.Document) study.Document {
	return study.Document{
		Units: d.Units, Vehicle: d.Vehicle, Suspension: d.Suspension, Steering: d.Steering,
		Travel: d.Travel, Readings: filled(d.Readings), Priors: d.Priors,
	}
}

// isFitted reports whether any number of the car was fitted.
func isFitted(d *study.Document) bool {
	for _, source := range d.Sources {
		if source == study.FromFit {
			return true
		}
	}
	return false
}

// hasOwnReadings reports whether there are readings to fit to that are no template's.
func hasOwnReadings(d *study.Document) bool {
	for i, r := range d.Readings {
		if r.Purpose != "verify" && len(r.Values) > 0 && !d.IsBorrowed(entryPath("readings", i)+".values") {
			return true
		}
	}
	return false
}
