package solver

import "math"

// MeanSteer returns the mean of the two wheels' steer angles, positive to the
// left, of an axle with these toes (ISO 8855, mean steer angle): what the axle
// steers by when its wheels toe unequally.
func MeanSteer(toe [2]Angle) Angle { return (toe[Right] - toe[Left]) / 2 }

// AxleSteerRate returns the mean steer, in radians per mm of the travel asked of
// a sweep, from its two wheels at one position: of a sweep of one wheel alone, the
// axle steer from that wheel's bump.
func AxleSteerRate(left, right *Instant) float64 { return (right.ToeRate - left.ToeRate) / 2 }

// RollSteer returns the mean steer per body roll, in degrees per degree, at a
// position of a sweep in [RollMotion]; halfTrack is half the track in mm.
// Positive steers to the left while the left side of the body rises, as it does in
// a left turn: at the front into the turn.
func RollSteer(left, right *Instant, halfTrack float64) float64 {
	return -halfTrack * AxleSteerRate(left, right) // the left wheel's travel falls as its side rises
}

// HalfTrack returns the distance of a wheel's contact point from the car's centre
// plane in the static position, mm.
func (x *Axle) HalfTrack(s Side) float64 { return x.home[s].Y }

// ToeDrag estimates the power, in watts, that an axle's two tyres take by their
// toe alone, running straight at a speed in m/s: each has the side force
// stiffness·toe, in N per radian, and drags by its sine. An estimate: camber,
// compliance and the tyre's own rolling resistance are left out.
func ToeDrag(toe [2]Angle, stiffness, speed float64) float64 {
	power := 0.0
	for _, a := range toe {
		power += stiffness * float64(a) * math.Sin(float64(a)) * speed
	}
	return power
}

// Drift estimates how far to the left, in mm, a car of a wheelbase in mm leaves
// its straight line over a run in mm with one axle held at a mean steer and the
// other straight. An estimate: kinematic and neutral, the driver doing nothing.
func Drift(steer Angle, wheelbase, run float64) float64 {
	turn := math.Tan(float64(steer)) / wheelbase // curvature of the path
	if turn == 0 {
		return 0
	}
	half := math.Sin(turn * run / 2)
	return 2 * half * half / turn
}
