package solver

import (
	"fmt"
	"math"
)

// BodyPosition is where a car's body stands over level ground, as people state
// it.
type BodyPosition struct {
	// Heave is the axle's bump, mm, before roll and dive.
	Heave float64
	// Roll is positive with the left side up (ISO 8855).
	Roll Angle
	// Dive is the body's pitch, positive with the nose down (ISO 8855).
	Dive Angle
	// PitchLever is how far the axle lies ahead of the point about which the
	// body dives, mm, negative for a rear axle; 0 stands for half the wheelbase.
	PitchLever float64
	// Steer is the steering input, mm or radians.
	Steer float64
}

// Attitude returns the travels and the steering input that a body's position
// comes to. Seen from the body the ground tilts, so that travel grows with the
// tangent of the angle. It returns an [*InputError] for a dive without lever or
// wheelbase, and for a body on its side or nose.
func (x *Axle) Attitude(b BodyPosition) (Attitude, error) {
	if err := checkTilt("roll", b.Roll); err != nil {
		return Attitude{}, err
	}
	if err := checkTilt("dive", b.Dive); err != nil {
		return Attitude{}, err
	}
	lever := b.PitchLever
	if lever == 0 {
		lever = x.Design().Wheelbase / 2
	}
	if b.Dive != 0 && lever == 0 {
		return Attitude{}, &InputError{"vehicle.wheelbase", "is needed to turn a dive in degrees into travel; state it or give heave in mm"}
	}
	return Attitude{
		Heave: b.Heave + lever*math.Tan(float64(b.Dive)),
		Roll:  x.meanHalfTrack() * math.Tan(float64(b.Roll)),
		Steer: b.Steer,
	}, nil
}

// maxTilt is the largest roll or dive, in degrees, that is no slip of the pen.
const maxTilt = 20.0

func checkTilt(key string, a Angle) error {
	if !(math.Abs(a.Degrees()) <= maxTilt) {
		return &InputError{key, fmt.Sprintf("is %.4g deg, must lie within %g deg of 0", a.Degrees(), maxTilt)}
	}
	return nil
}

// BodyRoll returns the roll of the body, positive with its left side up, in which
// the wheels have the travels of an attitude.
func (x *Axle) BodyRoll(a Attitude) Angle { return Angle(math.Atan2(a.Roll, x.meanHalfTrack())) }

// meanHalfTrack returns half the track of the static position, mm.
func (x *Axle) meanHalfTrack() float64 { return (x.home[Left].Y + x.home[Right].Y) / 2 }
