package study

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
