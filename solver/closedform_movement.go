package solver

import "gonum.org/v1/gonum/spatial/r3"

// stance is a knuckle between its lower ball joint, its upper one or the mount, and its
// tie rod, as they stand in V: what says how it turns as they move.
type stance struct {
	n     Vec     // along the line from the lower ball joint to the upper point
	inv   float64 // inverse of the product of n and that line
	reach Vec     // from the lower ball joint to the tie rod's outer ball
	q     Vec     // n × reach
	link  Vec     // from the tie rod's inner ball to the outer one
	grip  float64 // inverse of the product of link and q
}

// turn returns the angular velocity of the knuckle at which its lower ball moves at rate
// and its upper point by spread against that, and the tie rod keeps its length.
func (k *stance) turn(rate, spread Vec) Vec {
	return k.tied(r3.Scale(k.inv, r3.Cross(k.n, spread)), rate, 0)
}

// tied returns turn and that about n, with which the tie rod's outer ball moves so that
// its product with link falls by pull, where the lower ball moves at rate.
func (k *stance) tied(turn, rate Vec, pull float64) Vec {
	outer := r3.Add(rate, r3.Cross(turn, k.reach))
	return axpy(-k.grip*(r3.Dot(k.link, outer)+pull), k.n, turn)
}

// stand sets k to the stance of a knuckle on the wheel w, whose tie rod ends at outer and
// runs along link.
func (k *stance) stand(w *wheelPose, outer, link Vec) {
	k.n, k.link, k.reach = w.axisDir, link, r3.Sub(outer, w.axisAt)
	k.q = r3.Cross(k.n, k.reach)
	k.inv, k.grip = 1/r3.Dot(k.n, k.n), 1/r3.Dot(link, k.q)
}

// movement sets m to how the knuckle moves by its wheel's travel, the gear at rest, in the
// pose at. Its wheel is w there, and its tie rod ends at outer and runs along link.
//
// Velocities and accelerations go the way of the pose itself: from the lower arm, which
// turns by 1, to both ends of the knuckle, the length of the tie rod, the wheel.
func (f *closedForm) movement(at *pose, w *wheelPose, outer, link Vec, m *movement) {
	var k stance
	k.stand(w, outer, link)
	lower, arm := r3.Sub(w.axisAt, f.lower.centre), r3.Sub(w.centre, w.axisAt)
	rate := r3.Cross(f.lower.axis, lower)
	var head upperEnd
	turn := f.lower.axis
	if !f.hinged {
		turn = head.turn(f, &k, at, w, rate)
	}
	omega := k.tied(turn, rate, 0)
	v := r3.Add(rate, r3.Cross(omega, arm))

	gains := r3.Cross(turn, omega) // what carries n turns with the arm
	if !f.hinged {
		gains = head.gains(f, &k, omega, lower)
	}
	swung := r3.Cross(omega, k.reach)
	u := r3.Add(rate, swung)
	alpha := k.tied(gains, r3.Sub(r3.Cross(omega, swung), lower), r3.Dot(u, u))
	rise := r3.Cross(alpha, arm).Z + r3.Cross(omega, r3.Sub(v, rate)).Z - lower.Z

	gain := 1 / v.Z // turn of the arm by the travel
	m.omega, m.v = r3.Scale(gain, omega), r3.Scale(gain, v)
	m.alpha = r3.Scale(gain*gain, axpy(-gain*rise, omega, alpha))
}

// upperEnd is how the upper ball joint of a knuckle moves on an arm of its own, or the
// knuckle through the mount of a strut.
type upperEnd struct {
	from   Vec     // from the centre of its circle
	way    Vec     // along which it moves
	ease   float64 // inverse of the product of way and n
	pace   float64 // along way
	spread Vec     // its velocity against the lower ball's
}

// turn sets e for a lower ball that moves at rate, and returns the knuckle's turn but for
// that about n.
func (e *upperEnd) turn(f *closedForm, k *stance, at *pose, w *wheelPose, rate Vec) Vec {
	if f.strut != nil {
		e.way = at.r.turn(f.strut.dir)
	} else {
		e.from = r3.Sub(r3.Add(w.axisAt, w.axisDir), f.upper.centre)
		e.way = r3.Cross(f.upper.axis, e.from)
	}
	e.ease = 1 / r3.Dot(k.n, e.way)
	e.pace = e.ease * r3.Dot(k.n, rate)
	e.spread = axpy(e.pace, e.way, r3.Scale(-1, rate))
	return r3.Scale(k.inv, r3.Cross(k.n, e.spread))
}

// gains returns the gain of that turn, where the knuckle turns at omega and the lower ball
// is drawn to its circle's centre, from which it stands at lower. The upper end is drawn
// likewise, or by the turn of a strut that slides.
func (e *upperEnd) gains(f *closedForm, k *stance, omega, lower Vec) Vec {
	apart := axpy(-e.pace*e.pace, e.from, lower)
	if f.strut != nil {
		apart = axpy(2*e.pace, r3.Cross(omega, e.way), lower)
	}
	apart = axpy(-e.ease*(r3.Dot(k.n, apart)+r3.Dot(e.spread, e.spread)), e.way, apart)
	return r3.Scale(k.inv, r3.Cross(k.n, r3.Sub(apart, r3.Cross(omega, e.spread))))
}
