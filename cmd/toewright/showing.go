package main

import (
	"fmt"
	"math"

	"github.com/spf13/pflag"

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

// scale turns the numbers of an answer into those shown.
type scale struct {
	file, shown study.Units
	base        float64 // in shown units; 0 shows toe in degrees
	plate       bool    // toe is read on a plate of the base's length, not by indicators
}

// newScale returns the scale of a study as it says itself, then as s says.
func newScale(d *study.Document, s showing) (scale, error) {
	sc := scale{file: d.Units, shown: d.Units}
	if v := d.Display; v != nil {
		if v.Units != "" {
			sc.shown = v.Units
		}
		sc.plate = v.Toe == "plate"
		if v.Toe == "indicators" || sc.plate {
			sc.base = d.Units.Convert(v.Base, sc.shown)
		}
	}
	if err := sc.override(s); err != nil {
		return scale{}, err
	}
	return sc, nil
}

func (sc *scale) override(s showing) error {
	before := sc.shown
	switch {
	case s.inches && s.millimetres:
		return fmt.Errorf("--inches and --millimetres exclude each other")
	case s.inches:
		sc.shown = study.Inch
	case s.millimetres:
		sc.shown = study.Millimetre
	}
	sc.base = before.Convert(sc.base, sc.shown)
	if s.base == "" {
		return nil
	}
	base, err := study.ParseLength(s.base, sc.shown)
	if err != nil || !(base > 0) {
		return fmt.Errorf("--toe-base: %.40q is no length above 0", s.base)
	}
	sc.base, sc.plate = base, false
	return nil
}

// length formats a length of the answer.
func (sc scale) length(x float64) string {
	return fixed(sc.file.Convert(x, sc.shown), sc.lengthDecimals())
}

func (sc scale) lengthDecimals() int {
	if sc.shown == study.Inch {
		return 3
	}
	return 2
}

// toe formats a toe angle, or a difference of two, in degrees or over the base.
func (sc scale) toe(deg float64) string {
	switch rad := deg * math.Pi / 180; {
	case sc.base == 0:
		return fixed(deg, 4)
	case sc.plate:
		return fixed(sc.base*math.Sin(rad), sc.lengthDecimals()+1)
	default:
		return fixed(sc.base*math.Tan(rad), sc.lengthDecimals()+1)
	}
}

// toeUnit returns the unit of what toe returns.
func (sc scale) toeUnit() string {
	if sc.base == 0 {
		return "deg"
	}
	return string(sc.shown)
}

// basis says what toe as a length means; empty for degrees.
func (sc scale) basis() string {
	base := study.FormatLength(sc.base, sc.shown, false)
	switch {
	case sc.base == 0:
		return ""
	case sc.plate:
		return "Toe is what the end of a plate " + base + " long moves."
	}
	return "Toe is the difference that two indicators " + base + " apart read."
}

// fixed formats a number with so many decimals, a dash for one that there is not.
func fixed(x float64, decimals int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "-"
	}
	text := fmt.Sprintf("%.*f", decimals, x)
	if zero := fmt.Sprintf("%.*f", decimals, 0.0); text == "-"+zero {
		return zero
	}
	return text
}

// signed formats a difference with its sign.
func signed(text string) string {
	if text == "-" || text[0] == '-' {
		return text
	}
	return "+" + text
}
