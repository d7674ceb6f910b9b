package optimize

import (
	"fmt"
	"math"

	"toewright/internal/number"
	"toewright/solver"
)

// Gauge is a way to read toe as a length over a base.
type Gauge uint8

// The gauges. Each reads zero at no toe and more with toe-in, apart from where
// its own zero stands.
const (
	// Indicators are two dial indicators fixed to the ground, a base apart along
	// x, that touch a plate on the wheel at one height: base·tan(toe), whatever
	// the camber.
	Indicators Gauge = iota
	// Plate is a level plate of the base's length on the hub, the lateral
	// distance of its two ends measured: base·sin(toe).
	Plate
	// Dial is a single indicator on a stand that swings about a hinge along x at
	// its foot, so that a fixed stop on it follows the plate, and the indicator a
	// base ahead or behind reads the plate against the stop: base·tan(toe).
	Dial
	// Tape is a tape at the tyre's edges, held against a line along x: a plate as
	// long as the tyre's diameter, base·sin(toe).
	Tape
)

var gaugeNames = [...]string{"indicators", "plate", "dial", "tape"}

// String returns the name that study files use.
func (g Gauge) String() string { return gaugeNames[g] }

// ParseGauge returns the gauge called name; "" is that of two indicators.
func ParseGauge(name string) (Gauge, error) {
	if name == "" {
		return Indicators, nil
	}
	for i, n := range gaugeNames {
		if n == name {
			return Gauge(i), nil
		}
	}
	return 0, fmt.Errorf("optimize: gauge %q is unknown; use indicators, plate, dial or tape", name)
}

// bounded reports whether the gauge reads no more than its own length.
func (g Gauge) bounded() bool { return g == Plate || g == Tape }

// Reading returns what the gauge reads on a base, in the base's unit, at a toe.
func (g Gauge) Reading(toe solver.Angle, base float64) float64 {
	if g.bounded() {
		return number.OverPlate(float64(toe), base)
	}
	return number.OverIndicators(float64(toe), base)
}

// Toe returns the toe at which the gauge reads x: the inverse of [Gauge.Reading]
// within 90 deg of straight. It is NaN for a plate that reads more than its own
// length.
func (g Gauge) Toe(x, base float64) solver.Angle {
	if g.bounded() {
		return solver.Angle(number.ToeOfPlate(x, base))
	}
	return solver.Angle(number.ToeOfIndicators(x, base))
}

// rate returns the derivative of the reading by the toe, by radian.
func (g Gauge) rate(toe solver.Angle, base float64) float64 {
	c := math.Cos(float64(toe))
	if g.bounded() {
		return base * c
	}
	return base / (c * c)
}
