package solver

import "math"

// Angle is a plane angle in radians. Files and results show it in degrees.
type Angle float64

// Deg returns the angle of x degrees.
func Deg(x float64) Angle { return Angle(x * (math.Pi / 180)) }

// Degrees returns a in degrees. Deg(x).Degrees() differs from x by at most two
// units in the last place.
func (a Angle) Degrees() float64 { return float64(a) * (180 / math.Pi) }

// Radians returns a in radians.
func (a Angle) Radians() float64 { return float64(a) }

// atan2 is math.Atan2, which spends a third of its time on what is no quotient or stands
// behind: that x is positive is the rule here.
func atan2(y, x float64) float64 {
	if x > 0 {
		return math.Atan(y / x)
	}
	return math.Atan2(y, x)
}
