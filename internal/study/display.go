package study

import (
	"toewright/internal/number"
	"toewright/internal/strictjson"
)

// Display is how numbers are shown. It changes no number of the file.
type Display struct {
	Units     Units    `json:"units,omitzero" rule:"oneof=mm|in"`                  // Units of lengths; absent is the file's.
	Fraction  Fraction `json:"fraction,omitzero"`                                  // Fraction shows inches with the fraction of a rule beside them.
	Toe       string   `json:"toe,omitzero" rule:"oneof=degrees|indicators|plate"` // Toe in degrees (absent), or as a gauge of the base reads it.
	Base      float64  `json:"base,omitzero" rule:"positive"`                      // Base of the gauge, in the file's units; absent is 15 in.
	Yardstick string   `json:"yardstick,omitzero"`                                 // Yardstick names the candidate that differences are taken from; absent is the base car.
}

// Fraction is the denominator of the fractions beside inches: 16, 32 or 64, or
// [UsualFraction], which files have as true; 0 is none.
type Fraction int

// UsualFraction is the fraction of a file that does not say which: 1/32.
const UsualFraction Fraction = 1

// Denominator returns 16, 32 or 64; 0 where no fractions are shown.
func (f Fraction) Denominator() int {
	if f == UsualFraction {
		return 32
	}
	return int(f)
}

// BindNode reads a denominator, or whether there are fractions.
func (f *Fraction) BindNode(s strictjson.Scope, n *strictjson.Node) error {
	switch {
	case n.Kind == strictjson.Bool:
		*f = 0
		if n.Bool {
			*f = UsualFraction
		}
		return nil
	case n.Kind == strictjson.Number && (n.Number == 16 || n.Number == 32 || n.Number == 64):
		*f = Fraction(n.Number)
		return nil
	case n.Kind == strictjson.Number:
		return s.Errorf(n, "is %g; want 16, 32 or 64, or true for 32", n.Number)
	}
	return s.Want(n, "16, 32 or 64, or true for 32")
}

// UnbindNode writes what BindNode reads.
func (f Fraction) UnbindNode(string) (*strictjson.Node, error) {
	if f == 0 || f == UsualFraction {
		return &strictjson.Node{Kind: strictjson.Bool, Bool: f != 0}, nil
	}
	return &strictjson.Node{Kind: strictjson.Number, Number: float64(f)}, nil
}

// UsualBase is the base in mm over which toe is read where a study states none: 15 in,
// about a wheel's rim. Common practice.
const UsualBase = 381.0

// Style returns how the study wants its numbers written: in its own units and degrees,
// but for what its display says.
func (d *Document) Style() number.Style {
	s := number.Style{Units: d.Units, Base: UsualBase}
	v := d.Display
	if v == nil {
		return s
	}
	if v.Units != "" {
		s.Units = v.Units
	}
	s.Fraction, s.Gauge = v.Fraction.Denominator(), number.GaugeOf(v.Toe)
	if v.Base > 0 {
		s.Base = d.Units.Millimetres(v.Base)
	}
	return s
}
