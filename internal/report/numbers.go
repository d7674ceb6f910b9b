package report

import (
	"math"

	"toewright/app/model"
	"toewright/internal/engine"
	"toewright/internal/plot"
	"toewright/internal/study"
	"toewright/solver"
)

// numbers writes the study's numbers, lengths in the file's units and angles in
// degrees, as its reader wants to see them.
type numbers struct {
	model.Numbers
	file      study.Units
	fractions bool // beside the decimals, where a part is to be made
}

// numbersOf returns how a study wants its numbers written. Inches are decimal
// throughout: a thirty-second is too coarse for toe, and a forge wants both.
func numbersOf(d *study.Document) numbers {
	n := numbers{Numbers: model.NumbersOf(d), file: d.Units}
	n.fractions, n.Fraction = n.Fraction, false
	return n
}

// length writes a length without its unit, a dash for one that there is not.
func (n numbers) length(x float64) string { return n.LengthNumber(n.file.Millimetres(x)) }

// made writes a length of a part to be made: in inches, where the study is shown in
// fractions, with the nearest of them.
func (n numbers) made(x float64) string {
	if !n.fractions {
		return n.length(x)
	}
	return n.length(x) + " (" + plot.Fraction(n.file.Convert(x, study.Inch), 32) + ")"
}

// moved writes a displacement with the word for its direction.
func (n numbers) moved(x float64, positive, negative string) string {
	text := n.made(math.Abs(x))
	switch {
	case n.nothing(x):
		return text
	case x < 0:
		return text + " " + negative
	}
	return text + " " + positive
}

// nothing reports whether a length is written as zero.
func (n numbers) nothing(x float64) bool { return n.length(x) == n.length(0) }

// travel writes a wheel travel without its unit, as round as it is.
func (n numbers) travel(x float64) string {
	text := n.Travel(n.file.Millimetres(x))
	return text[:len(text)-len(" "+n.LengthUnit())]
}

// toe writes a toe of so many degrees in the unit that toe is shown in.
func (n numbers) toe(deg float64) string { return n.ToeNumber(solver.Deg(deg)) }

// asLength reports whether toe is shown as a length over the base of a gauge.
func (n numbers) asLength() bool { return n.Toe != model.ToeDegrees }

// degreeDecimals is how finely an angle in degrees is written.
const degreeDecimals = 3

// figureDecimals is how finely an angle beside the toe is written, and a ratio.
const figureDecimals = 2

func degrees(x float64) string { return plot.Decimal(x, degreeDecimals) }

// kind is what a figure of the sheet measures.
type kind uint8

const (
	angleKind kind = iota
	lengthKind
	longKind // a length of metres
	percentKind
	ratioKind
)

// figure writes a figure without its unit.
func (n numbers) figure(k kind, x engine.Number) string {
	v := float64(x)
	switch k {
	case lengthKind:
		return n.length(v)
	case longKind:
		return plot.Decimal(n.file.Convert(v, n.Units), 0)
	case percentKind:
		return plot.Decimal(v, 1)
	}
	return plot.Decimal(v, figureDecimals)
}

func (n numbers) unit(k kind) string {
	switch k {
	case angleKind:
		return "deg"
	case lengthKind, longKind:
		return n.LengthUnit()
	case percentKind:
		return "%"
	}
	return ""
}
