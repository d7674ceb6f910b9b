package model

import (
	"fmt"
	"math"

	"toewright/internal/number"
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

// figureWords are a short name for each figure and what it means.
var figureWords = [...]struct{ label, meaning string }{
	RMSFigure:        {"RMS", "Root mean square of the toe change less the target, over the positions of the window: how far off the curve is on the whole."},
	PeakFigure:       {"Peak", "Largest toe change less the target within the window, whichever its sign."},
	PeakTravelFigure: {"Peak at", "Wheel travel at which the largest error stands, bump positive."},
	SlopeFigure:      {"Slope", "Toe change per travel at ride height. Positive toes in as the wheel rises. The height of a ball corrects a slope."},
	PeakToPeakFigure: {"Range", "Largest toe less smallest within the window, whatever the target."},
}

// Label returns a short name of the figure.
func (f Figure) Label() string { return figureWords[f].label }

// Meaning says in words what the figure is.
func (f Figure) Meaning() string { return figureWords[f].meaning }

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

// FigureUnit returns the unit of a figure.
func (n Numbers) FigureUnit(f Figure) string {
	switch f {
	case PeakTravelFigure:
		return n.LengthUnit()
	case SlopeFigure:
		return n.SlopeUnit()
	}
	return n.ToeUnit()
}

// DifferenceNumber writes the difference of a figure from the yardstick's, with its
// sign.
func (n Numbers) DifferenceNumber(f Figure, value float64) string {
	return number.Signed(value, n.FigureNumber(f, value))
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
