package model

import (
	"math"

	"toewright/internal/plot"
	"toewright/internal/study"
	"toewright/solver"
)

// ToeStyle is how a toe is written.
type ToeStyle uint8

// The styles of toe: an angle, or what a gauge of a stated base reads. Two
// indicators fixed to the ground a base B apart read B·tan(toe), a plate of length
// B on the hub B·sin(toe).
const (
	ToeDegrees ToeStyle = iota
	ToeIndicators
	ToePlate
)

// Numbers writes and reads numbers as the user wants to see them. Inside, lengths
// are in mm and angles in radians.
type Numbers struct {
	Units    study.Units // of the lengths shown
	Fraction bool        // inches to the nearest 1/32
	Toe      ToeStyle
	Base     float64 // of the gauge, mm; more than 0 unless Toe is ToeDegrees
}

// usualBase is the base in mm over which toe is read where a study states none: 15
// in, about a wheel's rim. Common practice.
const usualBase = 381.0

// NumbersOf returns how a study wants its numbers written: in its own units and
// degrees, but for what its display says.
func NumbersOf(d *study.Document) Numbers {
	n := Numbers{Units: d.Units, Base: usualBase}
	v := d.Display
	if v == nil {
		return n
	}
	if v.Units != "" {
		n.Units = v.Units
	}
	n.Fraction = v.Fraction && n.Units == study.Inch
	n.Toe = map[string]ToeStyle{"indicators": ToeIndicators, "plate": ToePlate}[v.Toe]
	if v.Base > 0 {
		n.Base = d.Units.Millimetres(v.Base)
	}
	return n
}

// LengthUnit returns the unit that lengths are shown in.
func (n Numbers) LengthUnit() string { return string(n.Units) }

// LengthNumber writes a length of mm without its unit: millimetres to 0.01, inches
// to 0.001 or the nearest 1/32.
func (n Numbers) LengthNumber(mm float64) string {
	switch {
	case n.Units != study.Inch:
		return plot.Decimal(mm, 2)
	case n.Fraction:
		return plot.Fraction(n.Units.FromMillimetres(mm), 32)
	}
	return plot.Decimal(n.Units.FromMillimetres(mm), 3)
}

// Length writes a length of mm with its unit.
func (n Numbers) Length(mm float64) string { return n.LengthNumber(mm) + " " + n.LengthUnit() }

// Travel writes a wheel travel of mm with its unit, as round as it is.
func (n Numbers) Travel(mm float64) string {
	x := n.Units.FromMillimetres(mm)
	for decimals := range 3 {
		if scale := math.Pow10(decimals); math.Abs(x*scale-math.Round(x*scale)) < travelSlack {
			return plot.Decimal(x, decimals) + " " + n.LengthUnit()
		}
	}
	return plot.Decimal(x, 3) + " " + n.LengthUnit()
}

// travelSlack is the part of the last decimal below which a travel counts as round.
const travelSlack = 1e-6

// Angle writes an angle in degrees, with its unit.
func (n Numbers) Angle(a solver.Angle) string { return plot.Decimal(a.Degrees(), 2) + "°" }

// ToeUnit says what toe is shown in, with the base where it is a length: "deg" or
// "mm over 300 mm, indicators".
func (n Numbers) ToeUnit() string {
	switch n.Toe {
	case ToeIndicators:
		return n.LengthUnit() + " over " + n.Travel(n.Base) + ", indicators"
	case ToePlate:
		return n.LengthUnit() + " over " + n.Travel(n.Base) + ", plate"
	}
	return "deg"
}

// ToeNumber writes a toe without its unit: degrees and mm to 0.001, inches to
// 0.0001, since gauges read finer than rules.
func (n Numbers) ToeNumber(a solver.Angle) string {
	if n.Toe != ToeDegrees && n.Units == study.Inch {
		return plot.Decimal(n.ToeValue(a), 4)
	}
	return plot.Decimal(n.ToeValue(a), 3)
}

// toeNumber writes radians of toe without the unit.
func (n Numbers) toeNumber(rad float64) string { return n.ToeNumber(solver.Angle(rad)) }

// travelDecimals is how finely a travel of a grid is written.
func (n Numbers) travelDecimals() int {
	if n.Units == study.Inch {
		return 3
	}
	return 1
}

// ToeText writes a toe with its unit.
func (n Numbers) ToeText(a solver.Angle) string { return n.ToeNumber(a) + " " + n.ToeUnit() }

// ToeValue returns a toe in the unit that it is shown in.
func (n Numbers) ToeValue(a solver.Angle) float64 {
	switch n.Toe {
	case ToeIndicators:
		return n.Units.FromMillimetres(n.Base * math.Tan(a.Radians()))
	case ToePlate:
		return n.Units.FromMillimetres(n.Base * math.Sin(a.Radians()))
	}
	return a.Degrees()
}

// ToeOf returns the toe that a value in the unit shown stands for, NaN for a length
// that a plate cannot read.
func (n Numbers) ToeOf(value float64) solver.Angle {
	switch n.Toe {
	case ToeIndicators:
		return solver.Angle(math.Atan(n.Units.Millimetres(value) / n.Base))
	case ToePlate:
		return solver.Angle(math.Asin(n.Units.Millimetres(value) / n.Base))
	}
	return solver.Deg(value)
}

// SlopeUnit says what a slope of toe by travel is shown in.
func (n Numbers) SlopeUnit() string {
	if n.Toe == ToeDegrees {
		return "deg/" + n.LengthUnit()
	}
	return n.LengthUnit() + "/" + n.LengthUnit() + " over " + n.Travel(n.Base)
}

// SlopeNumber writes a slope of toe by travel, in radians per mm, without its unit.
// As a length over the base it is that of small toe, where indicators and plate
// read alike.
func (n Numbers) SlopeNumber(rate float64) string {
	if n.Toe == ToeDegrees {
		return plot.Decimal(solver.Angle(rate).Degrees()/n.Units.FromMillimetres(1), 4)
	}
	return plot.Decimal(rate*n.Base, 4)
}
