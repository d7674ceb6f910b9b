package model

import (
	"toewright/internal/plot"
	"toewright/internal/study"
	"toewright/solver"
)

// spacerMM and spacerInch are the steps that a drag snaps to, in mm: spacers come in
// whole millimetres and in sixteenths of an inch. Common practice.
const (
	spacerMM   = 1.0
	spacerInch = 25.4 / 16
)

// Spacer returns the step that a drag snaps to, in mm.
func (d *Desk) Spacer() float64 {
	if NumbersOf(d.Session.Document()).Units == study.Inch {
		return spacerInch
	}
	return spacerMM
}

// drawnSlack is how far a target may stray from what the hand drew, in degrees: finer
// than any hand.
const drawnSlack = 0.004

// DrawTarget draws on the target of the search from one place of a chart to another:
// toe change in radians at a travel in mm.
func (d *Desk) DrawTarget(from, to plot.Sample) error {
	doc, cars := d.Session.Document(), d.Session.Cars()
	target := cars.Target(solver.Left)
	toes := make([]float64, len(cars.Travels))
	for i, travel := range cars.Travels {
		toes[i] = target.At(travel).Radians()
	}
	plot.Stroke(cars.Travels, toes, from, to)
	var points [][2]float64
	for _, p := range plot.Simplify(plot.Samples(cars.Travels, toes), float64(solver.Deg(drawnSlack))) {
		points = append(points, [2]float64{doc.Units.FromMillimetres(p.At), solver.Angle(p.Value).Degrees()})
	}
	return d.Session.SetTargetPoints(points, "draw")
}
