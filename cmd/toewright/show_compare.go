package main

import (
	"fmt"
	"slices"

	"toewright/internal/engine"
)

// showCompare prints a table for each side, or one where the sides of every car
// are alike: a row for each figure and two columns for each car.
func showCompare(r *report, c *engine.CompareResult) {
	r.line("%s; differences are from %s", windowLine(r, c.Window), oneLine(c.Yardstick))
	left, right := bySide(c)
	where := circumstances(r, c.Motion, engine.Attitude{Heave: c.Heave, Roll: c.Roll, Steer: c.Steer})
	if slices.EqualFunc(left, right, alikeFigures) {
		showSide(r, left, c.Yardstick, "both sides"+where)
		return
	}
	showSide(r, left, c.Yardstick, "left side"+where)
	showSide(r, right, c.Yardstick, "right side"+where)
}

func bySide(c *engine.CompareResult) (left, right []engine.Compared) {
	for _, car := range c.Cars {
		if car.Side == "left" {
			left = append(left, car)
		} else {
			right = append(right, car)
		}
	}
	return left, right
}

func alikeFigures(a, b engine.Compared) bool {
	for _, row := range compareRows {
		if d := float64(*row.of(&a.Figures) - *row.of(&b.Figures)); d > sameOnPaper || d < -sameOnPaper {
			return false
		}
	}
	return a.CrossesZero == b.CrossesZero
}

// compareRow is a figure as it is printed.
type compareRow struct {
	label string
	kind  figureKind
	of    func(*engine.Figures) *engine.Number
}

type figureKind uint8

const (
	toeFigure figureKind = iota
	angleFigure
	lengthFigure
	slopeFigure
	curvatureFigure
)

var compareRows = []compareRow{
	{"static toe", toeFigure, func(f *engine.Figures) *engine.Number { return &f.StaticToe }},
	{"toe change, rms error", toeFigure, func(f *engine.Figures) *engine.Number { return &f.RMS }},
	{"toe change, largest error", toeFigure, func(f *engine.Figures) *engine.Number { return &f.Peak }},
	{"  at travel", lengthFigure, func(f *engine.Figures) *engine.Number { return &f.PeakTravel }},
	{"toe, highest less lowest", toeFigure, func(f *engine.Figures) *engine.Number { return &f.PeakToPeak }},
	{"toe, slope at rest", slopeFigure, func(f *engine.Figures) *engine.Number { return &f.Slope }},
	{"toe, curvature at rest", curvatureFigure, func(f *engine.Figures) *engine.Number { return &f.Curvature }},
	{"camber, static", angleFigure, func(f *engine.Figures) *engine.Number { return &f.StaticCamber }},
	{"camber, range", angleFigure, func(f *engine.Figures) *engine.Number { return &f.CamberRange }},
	{"caster, static", angleFigure, func(f *engine.Figures) *engine.Number { return &f.StaticCaster }},
	{"caster, range", angleFigure, func(f *engine.Figures) *engine.Number { return &f.CasterRange }},
	{"kingpin inclination", angleFigure, func(f *engine.Figures) *engine.Number { return &f.StaticKingpin }},
	{"scrub radius", lengthFigure, func(f *engine.Figures) *engine.Number { return &f.ScrubRadius }},
	{"trail", lengthFigure, func(f *engine.Figures) *engine.Number { return &f.Trail }},
	{"half track, range", lengthFigure, func(f *engine.Figures) *engine.Number { return &f.HalfTrackRange }},
	{"wheelbase, range", lengthFigure, func(f *engine.Figures) *engine.Number { return &f.WheelbaseRange }},
}

// differs returns the text for a car that is not the yardstick itself.
func differs(c engine.Compared, yardstick, text string) string {
	if c.Candidate == yardstick {
		return ""
	}
	return text
}

func showSide(r *report, cars []engine.Compared, yardstick, heading string) {
	r.heading("%s", heading)
	t := &table{}
	head := []string{"", ""}
	for _, c := range cars {
		head = append(head, oneLine(c.Candidate), differs(c, yardstick, "change"))
	}
	t.add(head...)
	for _, row := range compareRows {
		cells := []string{row.label, r.figureUnit(row.kind)}
		for i := range cars {
			change := signed(r.figure(row.kind, *row.of(&cars[i].Difference)))
			cells = append(cells, r.figure(row.kind, *row.of(&cars[i].Figures)), differs(cars[i], yardstick, change))
		}
		t.add(cells...)
	}
	r.table(t)
	showRemarks(r, cars)
}

// showRemarks prints what no number says.
func showRemarks(r *report, cars []engine.Compared) {
	for _, c := range cars {
		if c.CrossesZero {
			r.line("%s: toe goes from toe-in to toe-out within the window.", oneLine(c.Candidate))
		}
		if c.Reach != nil {
			r.line("%s: %s", oneLine(c.Candidate), lock(r, c.Reach))
		}
	}
}

func (r *report) figure(k figureKind, n engine.Number) string {
	x := float64(n)
	perLength := 1 / r.file.Convert(1, r.shown)
	switch k {
	case toeFigure:
		return r.toe(x)
	case angleFigure:
		return fixed(x, 3)
	case slopeFigure:
		return fixed(x*perLength, 5)
	case curvatureFigure:
		return fixed(x*perLength*perLength, 6)
	}
	return r.length(x)
}

func (r *report) figureUnit(k figureKind) string {
	switch k {
	case toeFigure:
		return r.toeUnit()
	case angleFigure:
		return "deg"
	case slopeFigure:
		return "deg/" + string(r.shown)
	case curvatureFigure:
		return "deg/" + string(r.shown) + "^2"
	}
	return string(r.shown)
}

// windowLine says over what travel figures are taken.
func windowLine(r *report, w engine.Window) string {
	return fmt.Sprintf("From %s of droop to %s of bump in steps of %s %s", r.length(w.Droop), r.length(w.Bump), r.length(w.Step), r.shown)
}
