package main

import (
	"toewright/internal/engine"
	"toewright/internal/number"
)

// compareRow is a figure as it is printed.
type compareRow struct {
	label string
	kind  figureKind
	of    func(*engine.Figures) engine.Number
}

type figureKind uint8

const (
	toeFigure figureKind = iota
	angleFigure
	lengthFigure
	longFigure  // a length of metres
	placeFigure // a travel, whose difference says nothing
	slopeFigure
	curvatureFigure
	percentFigure
	ratioFigure
)

var compareRows = []compareRow{
	{"static toe", toeFigure, func(f *engine.Figures) engine.Number { return f.StaticToe }},
	{"toe change, rms error", toeFigure, func(f *engine.Figures) engine.Number { return f.RMS }},
	{"toe change, largest error", toeFigure, func(f *engine.Figures) engine.Number { return f.Peak }},
	{"  at travel", placeFigure, func(f *engine.Figures) engine.Number { return f.PeakTravel }},
	{"toe, highest less lowest", toeFigure, func(f *engine.Figures) engine.Number { return f.PeakToPeak }},
	{"toe, slope at rest", slopeFigure, func(f *engine.Figures) engine.Number { return f.Slope }},
	{"toe, curvature at rest", curvatureFigure, func(f *engine.Figures) engine.Number { return f.Curvature }},
	{"camber, static", angleFigure, func(f *engine.Figures) engine.Number { return f.StaticCamber }},
	{"camber, range", angleFigure, func(f *engine.Figures) engine.Number { return f.CamberRange }},
	{"caster, static", angleFigure, func(f *engine.Figures) engine.Number { return f.StaticCaster }},
	{"caster, range", angleFigure, func(f *engine.Figures) engine.Number { return f.CasterRange }},
	{"kingpin inclination", angleFigure, func(f *engine.Figures) engine.Number { return f.StaticKingpin }},
	{"scrub radius", lengthFigure, func(f *engine.Figures) engine.Number { return f.ScrubRadius }},
	{"trail", lengthFigure, func(f *engine.Figures) engine.Number { return f.Trail }},
	{"roll-centre height", lengthFigure, func(f *engine.Figures) engine.Number { return f.RollCentre }},
	{"half track, range", lengthFigure, func(f *engine.Figures) engine.Number { return f.HalfTrackRange }},
	{"wheelbase, range", lengthFigure, func(f *engine.Figures) engine.Number { return f.WheelbaseRange }},
	{"inner ball, largest angle", angleFigure, func(f *engine.Figures) engine.Number { return f.InnerBallAngle }},
	{"outer ball, largest angle", angleFigure, func(f *engine.Figures) engine.Number { return f.OuterBallAngle }},
	{"tie-rod length", lengthFigure, func(f *engine.Figures) engine.Number { return f.TieRodLength }},
	{"toe-out on turns, inner wheel at 20 deg", angleFigure, func(f *engine.Figures) engine.Number { return f.ToeOutOnTurns }},
	{"Ackermann", percentFigure, func(f *engine.Figures) engine.Number { return f.Ackermann }},
	{"steering ratio", ratioFigure, func(f *engine.Figures) engine.Number { return f.SteeringRatio }},
	{"turning circle", longFigure, func(f *engine.Figures) engine.Number { return f.TurningCircle }},
}

// known reports whether any of the cars has the figure.
func (w *compareRow) known(cars []engine.Compared) bool {
	for i := range cars {
		if w.of(&cars[i].Figures).Valid() {
			return true
		}
	}
	return false
}

// cells returns the row of a table: each car's figure and its difference from the
// yardstick.
func (w *compareRow) cells(r *report, cars []engine.Compared, yardstick string) []string {
	cells := []string{w.label, r.figureUnit(w.kind)}
	for i := range cars {
		change := ""
		if w.kind != placeFigure {
			by := w.of(&cars[i].Difference)
			change = differs(cars[i], yardstick, number.Signed(float64(by), r.figure(w.kind, by)))
		}
		cells = append(cells, r.figure(w.kind, w.of(&cars[i].Figures)), change)
	}
	return cells
}

// figure formats a figure.
func (r *report) figure(k figureKind, n engine.Number) string {
	x := float64(n)
	switch k {
	case toeFigure:
		return r.toe(x)
	case angleFigure:
		return r.angle(x)
	case placeFigure:
		return r.travel(x)
	case slopeFigure:
		return number.Plain(r.Slope(r.perLength(x)))
	case curvatureFigure:
		return number.Plain(r.Curvature(r.perLength(r.perLength(x))))
	case percentFigure:
		return r.percent(x)
	case ratioFigure:
		return r.ratio(x)
	case longFigure:
		return r.long(x)
	}
	return r.length(x)
}

// figureUnit returns the unit of what figure returns.
func (r *report) figureUnit(k figureKind) string {
	switch k {
	case toeFigure:
		return r.ToeMark()
	case angleFigure:
		return "deg"
	case slopeFigure:
		return r.ToeMark() + "/" + r.LengthUnit() // the base stands in the heading
	case curvatureFigure:
		return r.CurvatureUnit()
	case percentFigure:
		return "%"
	case ratioFigure:
		return ""
	}
	return r.LengthUnit()
}
