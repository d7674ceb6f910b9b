package solver

import "math"

// Turn is how far the two wheels of an axle are steered into a turn.
type Turn struct {
	// Inner and Outer are the steer angles from straight ahead, positive into
	// the turn, as turn plates zeroed straight ahead show them: static toe is
	// left out.
	Inner, Outer Angle
	// ToLeft says that the left wheel is the inner one.
	ToLeft bool
}

// NewTurn returns the turn of two wheels steered by these angles, positive to the
// left.
func NewTurn(wheel [2]Angle) Turn {
	if wheel[Left]+wheel[Right] >= 0 {
		return Turn{Inner: wheel[Left], Outer: wheel[Right], ToLeft: true}
	}
	return Turn{Inner: -wheel[Right], Outer: -wheel[Left]}
}

// ToeOut returns the toe-out on the turn: by how much the inner wheel is steered
// farther than the outer.
func (t Turn) ToeOut() Angle { return t.Inner - t.Outer }

// CotRule returns the angle of the outer wheel with which the axes of both front
// wheels meet on the line of the rear axle (ISO 8855, Ackermann geometry):
// cot outer - cot inner = pivot/wheelbase, where pivot is the distance between
// the steering axes at the ground. Both lengths are in one unit.
func CotRule(inner Angle, pivot, wheelbase float64) Angle {
	s, c := math.Sincos(float64(inner))
	return Angle(math.Atan2(s, c+pivot/wheelbase*s))
}

// Ackermann returns the toe-out on the turn as a percentage of that of [CotRule]
// at the same inner angle: 0 for wheels that stay parallel, negative for
// anti-Ackermann. It is NaN straight ahead.
func (t Turn) Ackermann(pivot, wheelbase float64) float64 {
	return 100 * float64(t.ToeOut()) / float64(t.Inner-CotRule(t.Inner, pivot, wheelbase))
}

// TurningCircle returns the diameter of the circle on which the outer front
// tyre's contact point runs, kerb to kerb, when the rear axle follows without
// slip: 2·wheelbase/sin(outer) + track - pivot (SAE J695, from memory), all
// lengths in one unit. It is infinite straight ahead.
func (t Turn) TurningCircle(track, pivot, wheelbase float64) float64 {
	return 2*wheelbase/math.Sin(float64(t.Outer)) + track - pivot
}

// Ackermann returns [Turn.Ackermann] for the axle's own wheelbase and kingpin
// track. It returns an [*InputError] where no wheelbase is stated.
func (x *Axle) Ackermann(t Turn) (float64, error) {
	if err := x.needsWheelbase("Ackermann's rule"); err != nil {
		return 0, err
	}
	return t.Ackermann(x.KingpinTrack(), x.Design().Wheelbase), nil
}

// TurningCircle returns [Turn.TurningCircle] in mm for the axle's own wheelbase,
// track and kingpin track. It returns an [*InputError] where no wheelbase is
// stated.
func (x *Axle) TurningCircle(t Turn) (float64, error) {
	if err := x.needsWheelbase("the turning circle"); err != nil {
		return 0, err
	}
	return t.TurningCircle(2*x.meanHalfTrack(), x.KingpinTrack(), x.Design().Wheelbase), nil
}

func (x *Axle) needsWheelbase(what string) error {
	if x.Design().Wheelbase > 0 {
		return nil
	}
	return &InputError{"vehicle.wheelbase", "is needed for " + what + "; state it"}
}

// KingpinTrack returns the distance across the car, in mm, between the points
// where the steering axes meet the ground in the static position: the pivot
// distance of [CotRule].
func (x *Axle) KingpinTrack() float64 {
	track := 0.0
	var w wheelPose
	for _, s := range Sides {
		x.staticWheel(s, &w)
		track += w.axisAtHeight(w.centre.Z - x.tyreRadius).Y
	}
	return track
}

// SteeringRatio returns how far the steering wheel turns per turn of the road
// wheels: rate is their mean steer per steering input, in radians per mm or per
// radian, perTurn the input per turn of the steering wheel, in mm or radians.
func SteeringRatio(rate, perTurn float64) float64 { return 2 * math.Pi / (rate * perTurn) }
