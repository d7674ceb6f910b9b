package study

import "toewright/internal/number"

// Units are the units of a study's lengths.
type Units = number.Units

// The units of lengths.
const (
	Millimetre = number.Millimetre
	Inch       = number.Inch
)
