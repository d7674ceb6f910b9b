package model

import (
	"fmt"
	"math"

	"toewright/solver"
)

// Figure is one of the numbers by which cars are compared.
type Figure uint8

// The figures, in the order of a table.
const (
	RMSFigure Figure = iota
	PeakFigure
	PeakTravelFigure
	SlopeFigure
	PeakToPeakFigure
)

// TableFigures lists the figures in the order of a table.
var TableFigures = []Figure{RMSFigure, PeakFigure, PeakTravelFigure, SlopeFigure, PeakToPeakFigure}

// figureWords are a short name for each figure.
var figureWords = [...]string{RMSFigure: "RMS", PeakFigure: "Peak", PeakTravelFigure: "Peak at", SlopeFigure: "Slope", PeakToPeakFigure: "Range"}

// Label returns a short name of the figure.
func (f Figure) Label() string { return figureWords[f] }

// Of returns the figure in radians, mm or radians per mm.
func (f Figure) Of(from *solver.Figures) float64 {
	switch f {
	case RMSFigure:
		return from.RMS.Radians()
	case PeakFigure:
		return from.Peak.Radians()
	case PeakTravelFigure:
		return from.PeakTravel
	case SlopeFigure:
		return from.Slope
	}
	return from.PeakToPeak.Radians()
}

// Worse returns that of a car's worse wheel, by which it is ranked: the one of the larger
// size.
func (f Figure) Worse(c *Car) float64 {
	l, r := math.Abs(f.Of(&c.Figures[solver.Left])), math.Abs(f.Of(&c.Figures[solver.Right]))
	return max(l, r) // NaN stays
}

// FigureNumber writes a figure without its unit.
func (n Numbers) FigureNumber(f Figure, value float64) string {
	switch f {
	case PeakTravelFigure:
		return n.TravelNumber(value)
	case SlopeFigure:
		return n.Slope(solver.Angle(value).Degrees())
	}
	return n.ToeNumber(solver.Angle(value))
}

// ReachText says how far a car can be moved within the window.
func (n Numbers) ReachText(r *solver.Reach) string {
	switch {
	case r.Whole():
		return "whole window"
	case r.BumpEnds && r.DroopEnds:
		return fmt.Sprintf("%s bump, %s droop: %s locks", n.Travel(r.Bump), n.Travel(r.Droop), r.Link())
	case r.BumpEnds:
		return fmt.Sprintf("%s bump: %s locks", n.Travel(r.Bump), r.BumpLink)
	}
	return fmt.Sprintf("%s droop: %s locks", n.Travel(r.Droop), r.DroopLink)
}
