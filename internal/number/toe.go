package number

import "math"

// Gauge is how a toe is shown: as an angle, or as what a gauge of a stated base reads.
type Gauge uint8

// The ways to show toe. Toe-in is positive.
const (
	Degrees    Gauge = iota
	Indicators       // two indicators fixed to the ground, the base apart along the car
	Plate            // a plate of the base's length on the hub
)

// gaugeNames are those of study files.
var gaugeNames = [...]string{Degrees: "degrees", Indicators: "indicators", Plate: "plate"}

// String returns the name that study files use.
func (g Gauge) String() string { return gaugeNames[g] }

// GaugeOf returns the way to show toe of a name; any other is degrees.
func GaugeOf(name string) Gauge {
	for g, n := range gaugeNames {
		if n == name {
			return Gauge(g)
		}
	}
	return Degrees
}

// OverIndicators returns what two indicators a base apart read of a toe of radians, in
// the base's unit: base·tan(toe). They are fixed to the ground and read along two lines
// across the car.
func OverIndicators(toe, base float64) float64 { return base * math.Tan(toe) }

// OverPlate returns what a plate as long as the base, or a tape over a tyre of that
// diameter, reads of a toe of radians: base·sin(toe), since it turns with the wheel.
func OverPlate(toe, base float64) float64 { return base * math.Sin(toe) }

// ToeOfIndicators returns the toe in radians that two indicators read as a length.
func ToeOfIndicators(reading, base float64) float64 { return math.Atan2(reading, base) }

// ToeOfPlate returns the toe in radians that a plate reads as a length, NaN for one
// longer than the plate.
func ToeOfPlate(reading, base float64) float64 { return math.Asin(reading / base) }

// Radians and degrees of each other.
const (
	radians = math.Pi / 180
	degrees = 180 / math.Pi
)

// ToeShown returns a toe of degrees in the unit that it is shown in.
func (s Style) ToeShown(deg float64) float64 {
	switch s.Gauge {
	case Indicators:
		return s.shown(OverIndicators(deg*radians, s.Base))
	case Plate:
		return s.shown(OverPlate(deg*radians, s.Base))
	}
	return deg
}

// ReadingText writes what a gauge reads of a wheel that toes from one angle to another,
// degrees, and stood at zero at the second, without its unit.
func (s Style) ReadingText(toe, zero float64) string {
	return Decimal(s.ToeShown(toe)-s.ToeShown(zero), s.toeDecimals())
}

// ToeRead returns the toe in degrees of a value in the unit shown, NaN for a length that a
// plate cannot read.
func (s Style) ToeRead(value float64) float64 {
	switch s.Gauge {
	case Indicators:
		return ToeOfIndicators(s.Units.Millimetres(value), s.Base) * degrees
	case Plate:
		return ToeOfPlate(s.Units.Millimetres(value), s.Base) * degrees
	}
	return value
}

// Toe writes a toe of degrees without its unit: degrees and mm to 0.001, inches to 0.0001.
func (s Style) Toe(deg float64) string { return Decimal(s.ToeShown(deg), s.toeDecimals()) }

func (s Style) toeDecimals() int {
	if s.Gauge == Degrees {
		return angleDecimals
	}
	return s.lengthDecimals() + 1
}

// ToeMark returns the unit of toe without the base of a length: "deg", "mm".
func (s Style) ToeMark() string {
	if s.Gauge == Degrees {
		return "deg"
	}
	return s.LengthUnit()
}

// ToeUnit says what toe is shown in, with the base where it is a length: "deg" or "mm over
// 300 mm, indicators".
func (s Style) ToeUnit() string {
	if s.Gauge == Degrees {
		return s.ToeMark()
	}
	return s.ToeMark() + " over " + s.Travel(s.Base) + ", " + s.Gauge.String()
}

// SlopeUnit says what a slope of toe by travel is shown in.
func (s Style) SlopeUnit() string {
	if s.Gauge == Degrees {
		return "deg/" + s.LengthUnit()
	}
	return s.LengthUnit() + "/" + s.LengthUnit() + " over " + s.Travel(s.Base)
}

// Slope writes a slope of toe by travel, in degrees per mm, without its unit. As a length
// over the base it is that of small toe, where indicators and plate read alike: mm per mm,
// the same number in inches per inch.
func (s Style) Slope(rate float64) string {
	if s.Gauge == Degrees {
		return Decimal(rate/s.shown(1), slopeDecimals)
	}
	return Decimal(rate*radians*s.Base, slopeDecimals)
}

// SlopeRead returns the slope in degrees per mm of a value as [Style.Slope] shows it.
func (s Style) SlopeRead(value float64) float64 {
	if s.Gauge == Degrees {
		return value * s.shown(1)
	}
	return value / (radians * s.Base)
}

// CurvatureUnit says what a curvature of toe by travel is shown in.
func (s Style) CurvatureUnit() string { return s.ToeMark() + "/" + s.LengthUnit() + "²" }

// Curvature writes a curvature of toe by travel, in degrees per mm², without its unit.
func (s Style) Curvature(rate float64) string {
	rate /= s.shown(1) * s.shown(1)
	if s.Gauge != Degrees {
		rate *= radians * s.shown(s.Base)
	}
	return Decimal(rate, slopeDecimals+1)
}

// Basis says in a sentence what toe as a length means; empty for degrees.
func (s Style) Basis() string {
	switch s.Gauge {
	case Indicators:
		return "Toe is the difference that two indicators " + s.Travel(s.Base) + " apart read."
	case Plate:
		return "Toe is what the end of a plate " + s.Travel(s.Base) + " long moves."
	}
	return ""
}
