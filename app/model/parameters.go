package model

import (
	"strings"

	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// Value writes a parameter's value, in file units or degrees, with its unit and,
// for a change, its sign.
func (n Numbers) Value(d *study.Document, p solver.Parameter, value float64) string {
	text := n.AmountText(value, fileUnit(d, p.Quantity), d.Units)
	if p.Absolute {
		return text
	}
	return number.Signed(value, text)
}

// ValueNumber writes a parameter's value, in file units or degrees, as it stands in
// a field.
func (n Numbers) ValueNumber(d *study.Document, p solver.Parameter, value float64) string {
	return n.Amount(value, fileUnit(d, p.Quantity), d.Units)
}

// fileUnit returns the unit that files have a quantity in.
func fileUnit(d *study.Document, q solver.Quantity) string {
	if q == solver.AngleQuantity {
		return "deg"
	}
	return string(d.Units)
}

// ValueUnit returns the unit that a parameter's value is shown in.
func (n Numbers) ValueUnit(p solver.Parameter) string { return n.quantityUnit(p.Quantity) }

// quantityUnit returns the unit that a quantity is shown in.
func (n Numbers) quantityUnit(q solver.Quantity) string {
	if q == solver.AngleQuantity {
		return "deg"
	}
	return n.LengthUnit()
}

// ParseValue reads a parameter's value from a field and returns it in file units or
// degrees.
func (n Numbers) ParseValue(d *study.Document, p solver.Parameter, text string) (float64, error) {
	return n.parseQuantity(d, p.Quantity, text)
}

// parseQuantity reads a quantity and returns it in file units or degrees.
func (n Numbers) parseQuantity(d *study.Document, q solver.Quantity, text string) (float64, error) {
	if q == solver.AngleQuantity {
		return number.ParseDegrees(text)
	}
	mm, err := n.ParseLength(text)
	return d.Units.FromMillimetres(mm), err
}

// MainParameters are the keys of the three parameters that most curves are mended
// by, in the order in which they are shown.
var MainParameters = []string{"tieRodOuterHeight", "tieRodInnerHeight", "steeringArmLength"}

// FindParameters returns the parameters of a car whose label or key has every word
// of a text, in the order of the registry. No words find all.
func FindParameters(design *solver.Design, text string) []solver.Parameter {
	words := strings.Fields(strings.ToLower(text))
	var found []solver.Parameter
	for _, p := range solver.Parameters(design) {
		if hasAll(strings.ToLower(p.Label+" "+p.Key), words) {
			found = append(found, p)
		}
	}
	return found
}

func hasAll(text string, words []string) bool {
	for _, w := range words {
		if !strings.Contains(text, w) {
			return false
		}
	}
	return true
}
