package report

import (
	"math"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
)

// numbers writes the study's numbers, lengths in the file's units and angles in
// degrees, as its reader wants to see them.
type numbers struct {
	number.Style
	file study.Units
}

// numbersOf returns how a study wants its numbers written.
func numbersOf(d *study.Document) numbers { return numbers{d.Style(), d.Units} }

// length writes a length without its unit, in decimals alone: for columns. A dash stands
// for one that there is not.
func (n numbers) length(x float64) string { return n.LengthDecimal(n.file.Millimetres(x)) }

// made writes a length of a part to be made, with the fraction beside it where the study
// is shown in fractions.
func (n numbers) made(x float64) string { return n.LengthNumber(n.file.Millimetres(x)) }

// full writes a length with its unit and its fraction.
func (n numbers) full(x float64) string { return n.Length(n.file.Millimetres(x)) }

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
func (n numbers) travel(x float64) string { return n.TravelNumber(n.file.Millimetres(x)) }

// toe writes a toe of so many degrees in the unit that toe is shown in.
func (n numbers) toe(deg float64) string { return n.Toe(deg) }

// asLength reports whether toe is shown as a length over the base of a gauge.
func (n numbers) asLength() bool { return n.Gauge != number.Degrees }

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
	case angleKind:
		return n.AngleNumber(v)
	case lengthKind:
		return n.length(v)
	case longKind:
		return n.LongNumber(n.file.Millimetres(v))
	case percentKind:
		return number.Percent(v)
	}
	return number.Ratio(v)
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
