package study

import (
	"fmt"
	"iter"
	"math"
	"slices"
)

// Reading is one run of a gauge on one side of the car, with one zero.
type Reading struct {
	Side Side `json:"side" rule:"required,oneof=left|right"`
	// Gauge is "indicators" (two, fixed to the ground; the default), a "plate"
	// on the hub, a single "dial" on a swinging stand, or a "tape" at the tyre.
	Gauge string `json:"gauge,omitzero" rule:"oneof=indicators|plate|dial|tape"`
	// Base is the length over which toe is read: between the indicators, of the
	// plate, or of the tyre at the tape.
	Base          float64 `json:"base" rule:"required,positive"`
	Repeatability float64 `json:"repeatability,omitzero" rule:"positive"` // Repeatability is one standard deviation of one reading.
	// SlopeSD is one standard deviation of what the gauge gains steadily with travel,
	// length of reading by length of travel; nil is [UsualSlopeSD], 0 is a gauge known
	// not to. Turned says that the gauge stood end for end, front to rear, so that it
	// loses as much as the other runs of the side gain.
	SlopeSD *float64 `json:"slopeSd,omitzero" rule:"notnegative"`
	Turned  bool     `json:"turned,omitzero"`
	// TravelAs says how travel was read; absent is at the wheel centre or the hub. It
	// counts from the static height, bump positive, at "contact" (the lowest point of the
	// wheel's plane at the tyre's radius) and "lower-ball-joint" too. "block" is the height
	// of the blocks under the body less that at the static height, which falls in bump:
	// bump negative. "damper" is the length between the damper's mounts itself.
	TravelAs  string `json:"travelAs,omitzero" rule:"oneof=wheel-centre|contact|block|damper|lower-ball-joint"`
	Direction string `json:"direction,omitzero" rule:"oneof=bump|droop"` // Direction is the way in which the run was taken.
	// Zero is the reading that stands for no toe, where it is known; nil where
	// the gauge was zeroed anywhere.
	Zero    *float64     `json:"zero,omitzero"`
	Changes Changes      `json:"changes,omitzero"`                         // Changes are the parts fitted when the readings were taken.
	Purpose string       `json:"purpose,omitzero" rule:"oneof=fit|verify"` // Purpose is "fit" where absent.
	Note    string       `json:"note,omitzero"`
	Values  [][2]float64 `json:"values" rule:"required"` // Values are travel and reading, toe-in positive.
}

// MeasuredCar is a car of a series, as it was read once its part was on.
type MeasuredCar struct {
	Car      string    `json:"car" rule:"required"` // Car names it: a number, a customer, a chassis.
	Date     string    `json:"date,omitzero"`       // Date is when it was read, free text.
	Readings []Reading `json:"readings" rule:"required"`
}

// Runs returns all runs of a gauge with their paths, those of the study first and then those
// of each car of the series.
func (d *Document) Runs() iter.Seq2[string, *Reading] {
	return func(yield func(string, *Reading) bool) {
		for i := range d.Readings {
			if !yield(fmt.Sprintf("readings.%d", i), &d.Readings[i]) {
				return
			}
		}
		for i := range d.Series {
			for k := range d.Series[i].Readings {
				if !yield(fmt.Sprintf("series.%d.readings.%d", i, k), &d.Series[i].Readings[k]) {
					return
				}
			}
		}
	}
}

// UsualSlopeSD is what a gauge may gain with travel where a reading states nothing:
// one standard deviation, a tenth of a millimetre over 67 mm (our own estimate of two
// dials set unlike in height on a wheel whose camber changes).
const UsualSlopeSD = 0.0015

// UsedSlopeSD returns the standard deviation stated or usual.
func (r *Reading) UsedSlopeSD() float64 {
	if r.SlopeSD != nil {
		return *r.SlopeSD
	}
	return UsualSlopeSD
}

// tooLong returns the row of the first reading that is longer than the base of a gauge
// that reads no more than its own length, a plate or a tape; -1 where none is.
func (r *Reading) tooLong() int {
	if r.Gauge != "plate" && r.Gauge != "tape" {
		return -1
	}
	zero := 0.0
	if r.Zero != nil {
		zero = *r.Zero
	}
	return slices.IndexFunc(r.Values, func(v [2]float64) bool { return !(math.Abs(v[1]-zero) <= r.Base) })
}

// Prior says how well a parameter was known before any reading.
type Prior struct {
	Parameter string  `json:"parameter" rule:"required"`
	SD        float64 `json:"sd" rule:"required,positive"`
	// Shared is true where left and right are off alike; else each by itself.
	Shared bool `json:"shared,omitzero"`
}

// Advise asks which value of a parameter would make the fitted car best.
type Advise struct {
	Parameter string  `json:"parameter" rule:"required"`
	Step      float64 `json:"step,omitzero" rule:"positive"` // Step is the thickness of a spacer; 0 is any value.
	Min       float64 `json:"min" rule:"required"`
	Max       float64 `json:"max" rule:"required"`
}
