package main

import (
	"fmt"

	"github.com/spf13/pflag"

	"toewright/internal/number"
	"toewright/internal/study"
)

// showing is how people want to see numbers, in place of what the study says.
type showing struct {
	inches      bool
	millimetres bool
	base        string // toe as the length that two indicators so far apart read
}

func (s *showing) addFlags(fs *pflag.FlagSet) {
	fs.BoolVar(&s.inches, "inches", false, "show lengths in inches")
	fs.BoolVar(&s.millimetres, "millimetres", false, "show lengths in millimetres")
	fs.StringVar(&s.base, "toe-base", "", "show toe as the difference that two indicators this `length` apart read")
}

// scale writes the numbers of an answer, with the signs of a keyboard.
type scale struct {
	number.Style
	file study.Units
}

// newScale returns the scale of a study.
func newScale(d *study.Document) scale { return scale{d.Style(), d.Units} }

// over returns the study with its display as s says, so that tables and the sentences of
// an answer say numbers alike.
func (s *showing) over(d *study.Document) (*study.Document, error) {
	if *s == (showing{}) {
		return d, nil
	}
	var shown study.Display
	if d.Display != nil {
		shown = *d.Display
	}
	switch {
	case s.inches && s.millimetres:
		return nil, fmt.Errorf("--inches and --millimetres exclude each other")
	case s.inches:
		shown.Units = study.Inch
	case s.millimetres:
		shown.Units = study.Millimetre
	}
	out := *d
	out.Display = &shown
	if s.base == "" {
		return &out, nil
	}
	mm, err := out.Style().ParseLength(s.base)
	if err != nil || !(mm > 0) {
		return nil, fmt.Errorf("--toe-base: %q is not a length above 0", number.Clip(s.base))
	}
	shown.Toe, shown.Base = "indicators", d.Units.FromMillimetres(mm)
	return &out, nil
}

// length formats a length of the answer in decimals alone, for tables.
func (sc scale) length(x float64) string {
	return number.Plain(sc.LengthDecimal(sc.file.Millimetres(x)))
}

// travel formats a wheel travel, or the step of a grid.
func (sc scale) travel(x float64) string {
	return number.Plain(sc.TravelNumber(sc.file.Millimetres(x)))
}

// toe formats a toe angle, or a difference of two, in degrees or over the base.
func (sc scale) toe(deg float64) string { return number.Plain(sc.Toe(deg)) }

// angle formats an angle in degrees.
func (sc scale) angle(deg float64) string { return number.Plain(sc.AngleNumber(deg)) }

// long formats a length of metres.
func (sc scale) long(x float64) string { return number.Plain(sc.LongNumber(sc.file.Millimetres(x))) }

// percent formats a percentage.
func (sc scale) percent(x float64) string { return number.Plain(number.Percent(x)) }

// ratio formats a number without a unit.
func (sc scale) ratio(x float64) string { return number.Plain(number.Ratio(x)) }

// fixed formats a number with so many decimals, a dash for one that there is not.
func fixed(x float64, decimals int) string { return number.Plain(number.Decimal(x, decimals)) }
