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

// maxHeave is the largest heave in mm that may be asked for.
const maxHeave = 2000.0

// attitude returns a as the solver takes it, for one car: travel by roll goes with
// its track.
func (c *cars) attitude(a Attitude, axle *solver.Axle) (solver.Attitude, error) {
	heave := c.doc.Units.Millimetres(a.Heave)
	if !(math.Abs(heave) <= maxHeave) {
		return solver.Attitude{}, wrongf("heave", "%g %s is more than any car has", a.Heave, c.doc.Units)
	}
	at, err := axle.Attitude(solver.BodyPosition{Heave: heave, Roll: solver.Deg(a.Roll), Steer: c.steer(a.Steer)})
	return at, explain(err, "")
}

// steer returns a steering input in mm or radians.
func (c *cars) steer(x float64) float64 {
	if c.design.Gear.Quantity() == solver.AngleQuantity {
		return solver.Deg(x).Radians()
	}
	return c.doc.Units.Millimetres(x)
}

// studyAttitude returns the attitude of a scenario; nil is straight ahead at rest.
func studyAttitude(a *study.Attitude) Attitude {
	if a == nil {
		return Attitude{}
	}
	return Attitude{Heave: a.Heave, Roll: a.Roll, Steer: a.Steer}
}
