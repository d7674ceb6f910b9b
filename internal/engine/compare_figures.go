package engine

import (
	"toewright/internal/number"
	"toewright/internal/study"
)

// CompareFigure is one of the [Figures] of a compared car, for tables.
type CompareFigure struct {
	Key   string // by which lists to choose from know it
	Label string
	// Place says that it is where something stands: no difference of it says anything.
	Place bool
	Of    func(*Figures) Number

	unit  func(number.Style) string
	write func(number.Style, study.Units, float64) string
}

// Unit returns the unit in which s shows the figure, toe over a base without the base;
// empty of a ratio.
func (f *CompareFigure) Unit(s number.Style) string { return f.unit(s) }

// Number writes a value of the figure, or a difference of two, without its unit; file is
// the unit of the study's lengths.
func (f *CompareFigure) Number(s number.Style, file study.Units, x Number) string {
	return f.write(s, file, float64(x))
}

// quantity is how a kind of figure is written.
type quantity struct {
	unit  func(number.Style) string
	write func(number.Style, study.Units, float64) string
}

var (
	toeFigure    = quantity{number.Style.ToeMark, func(s number.Style, _ study.Units, x float64) string { return s.Toe(x) }}
	angleFigure  = quantity{func(number.Style) string { return "deg" }, func(s number.Style, _ study.Units, x float64) string { return s.AngleNumber(x) }}
	lengthFigure = quantity{number.Style.LengthUnit, func(s number.Style, file study.Units, x float64) string { return s.LengthDecimal(file.Millimetres(x)) }}
	longFigure   = quantity{number.Style.LengthUnit, func(s number.Style, file study.Units, x float64) string { return s.LongNumber(file.Millimetres(x)) }}
	placeFigure  = quantity{number.Style.LengthUnit, func(s number.Style, file study.Units, x float64) string { return s.TravelNumber(file.Millimetres(x)) }}
	// The base of a toe stands in the heading.
	slopeFigure     = quantity{func(s number.Style) string { return s.ToeMark() + "/" + s.LengthUnit() }, func(s number.Style, file study.Units, x float64) string { return s.Slope(x / file.Millimetres(1)) }}
	curvatureFigure = quantity{number.Style.CurvatureUnit, func(s number.Style, file study.Units, x float64) string {
		return s.Curvature(x / file.Millimetres(1) / file.Millimetres(1))
	}}
	percentFigure = quantity{func(number.Style) string { return "%" }, func(_ number.Style, _ study.Units, x float64) string { return number.Percent(x) }}
	ratioFigure   = quantity{func(number.Style) string { return "" }, func(_ number.Style, _ study.Units, x float64) string { return number.Ratio(x) }}
)

// figure returns a figure of a kind.
func (q quantity) figure(key, label string, of func(*Figures) Number) CompareFigure {
	return CompareFigure{Key: key, Label: label, Of: of, unit: q.unit, write: q.write}
}

// place returns a figure that says where something stands.
func (q quantity) place(key, label string, of func(*Figures) Number) CompareFigure {
	f := q.figure(key, label, of)
	f.Place = true
	return f
}

// CompareFigures lists the figures in the order in which tables show them.
var CompareFigures = []CompareFigure{
	toeFigure.figure("staticToe", "static toe", func(f *Figures) Number { return f.StaticToe }),
	toeFigure.figure("rms", "toe change, rms error", func(f *Figures) Number { return f.RMS }),
	toeFigure.figure("peak", "toe change, largest error", func(f *Figures) Number { return f.Peak }),
	placeFigure.place("peakTravel", "  at travel", func(f *Figures) Number { return f.PeakTravel }),
	toeFigure.figure("peakToPeak", "toe, highest less lowest", func(f *Figures) Number { return f.PeakToPeak }),
	slopeFigure.figure("slope", "toe, slope at rest", func(f *Figures) Number { return f.Slope }),
	curvatureFigure.figure("curvature", "toe, curvature at rest", func(f *Figures) Number { return f.Curvature }),
	angleFigure.figure("staticCamber", "camber, static", func(f *Figures) Number { return f.StaticCamber }),
	angleFigure.figure("camberRange", "camber, range", func(f *Figures) Number { return f.CamberRange }),
	angleFigure.figure("staticCaster", "caster, static", func(f *Figures) Number { return f.StaticCaster }),
	angleFigure.figure("casterRange", "caster, range", func(f *Figures) Number { return f.CasterRange }),
	angleFigure.figure("staticKingpinInclination", "kingpin inclination", func(f *Figures) Number { return f.StaticKingpin }),
	lengthFigure.figure("scrubRadius", "scrub radius", func(f *Figures) Number { return f.ScrubRadius }),
	lengthFigure.figure("trail", "trail", func(f *Figures) Number { return f.Trail }),
	lengthFigure.figure("rollCentreHeight", "roll-centre height", func(f *Figures) Number { return f.RollCentre }),
	lengthFigure.figure("halfTrackRange", "half track, range", func(f *Figures) Number { return f.HalfTrackRange }),
	lengthFigure.figure("wheelbaseRange", "wheelbase, range", func(f *Figures) Number { return f.WheelbaseRange }),
	angleFigure.figure("innerBallAngle", "inner ball, largest angle", func(f *Figures) Number { return f.InnerBallAngle }),
	angleFigure.figure("outerBallAngle", "outer ball, largest angle", func(f *Figures) Number { return f.OuterBallAngle }),
	angleFigure.figure("innerBallAtLock", "inner ball, largest angle, lock to lock", func(f *Figures) Number { return f.InnerBallAtLock }),
	angleFigure.figure("outerBallAtLock", "outer ball, largest angle, lock to lock", func(f *Figures) Number { return f.OuterBallAtLock }),
	lengthFigure.figure("tieRodLength", "tie-rod length", func(f *Figures) Number { return f.TieRodLength }),
	lengthFigure.figure("steeringArmLength", "steering arm length", func(f *Figures) Number { return f.ArmLength }),
	angleFigure.figure("toeOutOnTurns", "toe-out on turns, inner wheel at 20 deg", func(f *Figures) Number { return f.ToeOutOnTurns }),
	percentFigure.figure("ackermann", "Ackermann", func(f *Figures) Number { return f.Ackermann }),
	ratioFigure.figure("steeringRatio", "steering ratio", func(f *Figures) Number { return f.SteeringRatio }),
	longFigure.figure("turningCircle", "turning circle", func(f *Figures) Number { return f.TurningCircle }),
}

// CompareFigureByKey returns the figure of a key, nil where there is none.
func CompareFigureByKey(key string) *CompareFigure {
	for i := range CompareFigures {
		if CompareFigures[i].Key == key {
			return &CompareFigures[i]
		}
	}
	return nil
}
