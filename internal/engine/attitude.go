package engine

import (
	"math"

	"toewright/internal/study"
	"toewright/solver"
)

// Attitude is the position of the car about which its travel is taken. Heave is
// the travel of both wheels, bump positive; roll that of the body in degrees by ISO
// 8855, positive lowering the right side; steer the displacement along the rack's
// axis, or the pitman arm's degrees.
type Attitude struct {
	Heave float64 `json:"heave,omitzero"`
	Roll  float64 `json:"roll,omitzero"`
	Steer float64 `json:"steer,omitzero"`
}

// maxRoll is the largest body roll in degrees that may be asked for. A car that
// rolls further lies on its side.
const maxRoll = 45.0

// maxHeave is the largest heave in mm that may be asked for.
const maxHeave = 2000.0

// attitude returns a as the solver takes it, for a car of the given half track.
// The wheels' own height in the body is the half track times the tangent of the
// roll, since the line between them keeps level with the ground.
func (c *cars) attitude(a Attitude, axle *solver.Axle) (solver.Attitude, error) {
	if !(math.Abs(a.Roll) <= maxRoll) {
		return solver.Attitude{}, wrongf("roll", "%g deg is not within %g deg of 0", a.Roll, maxRoll)
	}
	if !(math.Abs(c.doc.Units.Millimetres(a.Heave)) <= maxHeave) {
		return solver.Attitude{}, wrongf("heave", "%g %s is more than any car has", a.Heave, c.doc.Units)
	}
	return solver.Attitude{
		Heave: c.doc.Units.Millimetres(a.Heave),
		Roll:  halfTrack(axle) * math.Tan(solver.Deg(a.Roll).Radians()),
		Steer: c.steer(a.Steer),
	}, nil
}

// steer returns a steering input in mm or radians.
func (c *cars) steer(x float64) float64 {
	if c.design.Gear.Quantity() == solver.AngleQuantity {
		return solver.Deg(x).Radians()
	}
	return c.doc.Units.Millimetres(x)
}

// halfTrack returns half the distance between the wheel centres at rest, in mm.
func halfTrack(x *solver.Axle) float64 {
	for i, h := range x.Design().Kind.SidePoints {
		if h.Role == solver.WheelCentreRole {
			return (x.StaticPoint(solver.Left, i).Y - x.StaticPoint(solver.Right, i).Y) / 2
		}
	}
	return 0
}

// studyAttitude returns the attitude of a scenario; nil is straight ahead at rest.
func studyAttitude(a *study.Attitude) Attitude {
	if a == nil {
		return Attitude{}
	}
	return Attitude{Heave: a.Heave, Roll: a.Roll, Steer: a.Steer}
}
