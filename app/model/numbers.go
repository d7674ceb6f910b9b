package model

import (
	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// Numbers writes and reads numbers as the user wants to see them. Inside, lengths are in
// mm and angles in radians.
type Numbers struct{ number.Style }

// NumbersOf returns how a study wants its numbers written.
func NumbersOf(d *study.Document) Numbers { return Numbers{d.Style()} }

// ToeNumber writes a toe without its unit.
func (n Numbers) ToeNumber(a solver.Angle) string { return n.Toe(a.Degrees()) }

// ToeText writes a toe with its unit.
func (n Numbers) ToeText(a solver.Angle) string { return n.ToeNumber(a) + " " + n.ToeUnit() }

// TravelWords says where a wheel stands, "bump +30 mm": its travel in mm, bump positive.
func (n Numbers) TravelWords(mm float64) string {
	switch text := n.TravelNumber(mm); {
	case text == n.TravelNumber(0):
		return "ride height"
	case mm > 0:
		return "bump +" + text + " " + n.LengthUnit()
	default:
		return "droop " + text + " " + n.LengthUnit()
	}
}

// ToeValue returns a toe in the unit that it is shown in.
func (n Numbers) ToeValue(a solver.Angle) float64 { return n.ToeShown(a.Degrees()) }

// ToeOf returns the toe that a value in the unit shown stands for, NaN for a length that
// a plate cannot read.
func (n Numbers) ToeOf(value float64) solver.Angle { return solver.Deg(n.ToeRead(value)) }
