package solver

import "math"

// Toe as a length over a base, both in mm. Two indicators fixed to the ground
// read along two lines across the car the base apart: base·tan. A plate of that
// length on the hub, or a tape at the tyre's edges, turns with the wheel:
// base·sin. Toe-in is positive.

// IndicatorToe returns what two indicators a base apart read of a toe angle.
func IndicatorToe(toe Angle, base float64) float64 { return base * math.Tan(float64(toe)) }

// PlateToe returns what a plate of length base, or a tape over a tyre of that
// diameter, reads of a toe angle.
func PlateToe(toe Angle, base float64) float64 { return base * math.Sin(float64(toe)) }

// ToeOfIndicators returns the toe angle that indicators a base apart read as a
// length.
func ToeOfIndicators(reading, base float64) Angle { return Angle(math.Atan2(reading, base)) }

// ToeOfPlate returns the toe angle that a plate of length base reads. It is NaN
// for a reading longer than the plate.
func ToeOfPlate(reading, base float64) Angle { return Angle(math.Asin(reading / base)) }

// ToeSlopeOver returns a slope of the toe, in radians per mm of travel, as length
// over a base: mm per mm, the same number in inches per inch.
func ToeSlopeOver(slope, base float64) float64 { return slope * base }

// Scrub returns how far a tyre set at a toe angle is dragged sideways while it
// rolls a distance, in the unit of that distance.
func Scrub(toe Angle, distance float64) float64 { return distance * math.Sin(float64(toe)) }
