package number

import "math"

// Style is how a reader wants numbers written. Lengths are given to it in mm, angles and
// toe in degrees; NaN is written as a dash. The zero value writes mm and degrees.
type Style struct {
	Units    Units   // of the lengths shown; "" is mm
	Fraction int     // inches with the fraction beside them: its denominator, 16, 32 or 64; 0 is none
	Gauge    Gauge   // by which toe is shown
	Base     float64 // of the gauge, mm; more than 0 unless the gauge is Degrees
}

// Decimals of what is written. A toe read as a length has one more than a length, since
// gauges read finer than rules.
const (
	mmDecimals     = 2
	inchDecimals   = 3
	angleDecimals  = 3
	slopeDecimals  = 5
	percentDigits  = 1
	ratioDecimals  = 2
	travelDecimals = 3
)

// LengthUnit returns the unit that lengths are shown in.
func (s Style) LengthUnit() string {
	if s.Units == Inch {
		return string(Inch)
	}
	return string(Millimetre)
}

func (s Style) lengthDecimals() int {
	if s.Units == Inch {
		return inchDecimals
	}
	return mmDecimals
}

// LastDecimal returns what the last decimal of a length shown in a unit is worth, mm.
func LastDecimal(u Units) float64 {
	s := Style{Units: u}
	return u.Millimetres(math.Pow10(-s.lengthDecimals()))
}

// shown returns a length of mm in the unit shown.
func (s Style) shown(mm float64) float64 { return s.Units.FromMillimetres(mm) }

// LengthDecimal writes a length of mm in decimals alone, without its unit: mm to 0.01,
// inches to 0.001.
func (s Style) LengthDecimal(mm float64) string { return Decimal(s.shown(mm), s.lengthDecimals()) }

// LengthFine writes a length of mm as LengthDecimal does, with one more decimal.
func (s Style) LengthFine(mm float64) string { return Decimal(s.shown(mm), s.lengthDecimals()+1) }

// LengthNumber writes a length of mm without its unit, in inches with the fraction beside
// it where fractions are shown: "0.266 (17/64)".
func (s Style) LengthNumber(mm float64) string {
	return s.LengthDecimal(mm) + parenthesised(s.fraction(mm))
}

// Length writes a length of mm with its unit: "6.75 mm", "0.266 in (17/64)".
func (s Style) Length(mm float64) string {
	return s.LengthDecimal(mm) + " " + s.LengthUnit() + parenthesised(s.fraction(mm))
}

// fraction returns what stands beside the decimals of a length, "" for nothing.
func (s Style) fraction(mm float64) string {
	if !s.Fractions() {
		return ""
	}
	return besides(s.shown(mm), s.Fraction)
}

func parenthesised(text string) string {
	if text == "" {
		return ""
	}
	return " (" + text + ")"
}

// TravelNumber writes a wheel travel of mm, or the step of a grid, without its unit, as
// round as it is: 50, 0.25.
func (s Style) TravelNumber(mm float64) string { return Trimmed(s.shown(mm), travelDecimals) }

// Travel writes a wheel travel of mm with its unit.
func (s Style) Travel(mm float64) string { return s.TravelNumber(mm) + " " + s.LengthUnit() }

// LongNumber writes a length of metres, such as a turning circle, without its unit: whole
// mm, tenths of an inch.
func (s Style) LongNumber(mm float64) string {
	return Decimal(s.shown(mm), s.lengthDecimals()-mmDecimals)
}

// AngleNumber writes an angle of degrees without its unit.
func (s Style) AngleNumber(deg float64) string { return Decimal(deg, angleDecimals) }

// Amount writes a number of a study whose unit results give as the file's, "deg", "%" or, for
// a ratio, "". It has no unit behind it.
func (s Style) Amount(x float64, unit string, file Units) string {
	switch unit {
	case string(Millimetre), string(Inch):
		return s.LengthNumber(file.Millimetres(x))
	case "deg":
		return s.AngleNumber(x)
	case "%":
		return Percent(x)
	}
	if q := mechanical(unit); q != nil {
		return q.Number(s, x)
	}
	return Ratio(x)
}

// AmountUnit returns the unit in which such a number is shown.
func (s Style) AmountUnit(unit string) string {
	switch unit {
	case string(Millimetre), string(Inch):
		return s.LengthUnit()
	}
	if q := mechanical(unit); q != nil {
		return q.Unit(s)
	}
	return unit
}

// AmountText writes such a number with its unit.
func (s Style) AmountText(x float64, unit string, file Units) string {
	switch unit {
	case string(Millimetre), string(Inch):
		return s.Length(file.Millimetres(x))
	case "":
		return Ratio(x)
	}
	if q := mechanical(unit); q != nil {
		return q.Text(s, x)
	}
	return s.Amount(x, unit, file) + " " + unit
}

// Percent writes a percentage without its sign.
func Percent(x float64) string { return Decimal(x, percentDigits) }

// Ratio writes a number without a unit.
func Ratio(x float64) string { return Decimal(x, ratioDecimals) }

// Exact writes a number in the unit shown as it is typed again without loss: with the
// decimals that it has, six at most, or as a fraction that it is where fractions are shown.
func (s Style) Exact(x float64, length bool) string {
	if parts := math.Abs(x) * finest; length && s.Fractions() && math.Abs(parts-math.Round(parts)) < finest*1e-6 {
		return Fraction(x, finest)
	}
	return Trimmed(x, 6)
}

// Fractions reports whether lengths have fractions beside them.
func (s Style) Fractions() bool { return s.Units == Inch && s.Fraction != 0 }
