package solver

// Position is one wheel at one travel and steering input.
type Position struct {
	// Travel is the travel asked for, mm, bump positive, from the static height.
	Travel float64
	// Toe is the toe angle itself, static toe included, toe-in positive: the
	// angle in the XY plane from the X axis to the wheel plane.
	Toe Angle
	// Camber is positive when the wheel's top leans outboard: asin of the fall
	// of its outward spin axis.
	Camber Angle
	// Caster is positive when the steering axis leans rearward at the top, in
	// side view.
	Caster Angle
	// KingpinInclination is positive when it leans inboard at the top, in front
	// view.
	KingpinInclination Angle
	// WheelCentre is in vehicle axes.
	WheelCentre Vec
	// HalfTrackChange is the movement outboard, and WheelbaseChange forward, of
	// the contact point from the static position, mm.
	HalfTrackChange, WheelbaseChange float64
	// ScrubRadius is the distance, in front view, from the contact point inboard
	// to the steering axis at the ground (kingpin offset at ground of ISO 8855);
	// Trail the distance, in side view, from the contact point forward to it
	// (castor offset at ground). The ground passes the tyre radius below the
	// wheel centre. Both are along the vehicle's axes, also of a wheel that is
	// steered, where ISO 8855 takes them along the wheel's own.
	ScrubRadius, Trail float64
	// Instant and Joints are set where a sweep asks for them.
	Instant Instant
	Joints  JointAngles
}
