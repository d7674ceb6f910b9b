package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Instant is what holds of a wheel at one position for the smallest movement
// from it, the gear at rest. All is exact: it comes from the velocity and the
// acceleration of the knuckle, not from neighbouring positions.
//
// A corner moves by its own wheel's travel, whatever the motion of the sweep. A
// solid axle moves by two travels: its front view is that of a roll, its side
// view that of both wheels together.
type Instant struct {
	// ToeRate and CamberRate are derivatives by the travel asked of the sweep,
	// in radians per mm, ToeCurvature the second one, in radians per mm².
	ToeRate, CamberRate, ToeCurvature float64
	// FrontCentre is the instant centre in front view: the point of the
	// transverse plane through the wheel centre that moves neither sideways nor
	// up if it is carried with the knuckle. SideCentre is that in side view, in
	// the longitudinal plane through the wheel centre. Both are in vehicle axes
	// and infinite where the knuckle does not turn in that view.
	FrontCentre, SideCentre Vec
	// Contact is the point where the tyre touches the ground, in vehicle axes.
	Contact Vec
	// ContactRate is the velocity of the knuckle there per mm of its wheel's
	// travel, in vehicle axes. Where it moves outboard in bump an inward lateral
	// force lifts the body, and where it moves forward so does braking by a brake
	// at the wheel: outboard/z and x/z are the slopes of the two swing arms.
	ContactRate Vec
	// RollCentreHeight is the height above the ground, in mm, at which the line
	// from the contact point to the front-view instant centre crosses the car's
	// centre plane: the roll centre of this wheel and its mirror image.
	RollCentreHeight float64
}

// centreOfTurn returns the place, from the wheel centre, that stands still in a
// view in which the wheel centre moves by across and up and the knuckle turns at
// rate from across to up.
func centreOfTurn(across, up, rate float64) (da, du float64) {
	k := 1 / rate
	return -up * k, across * k
}

// views sets what follows from the movement in front view and in side view, that of a wheel
// which rises by 1. p is the wheel as a left one, which stands on the ground.
func (p *wheelPose) views(front, side *movement, out *Instant) {
	y, z := centreOfTurn(front.v.Y, front.v.Z, front.omega.X)
	out.FrontCentre = Vec{X: p.centre.X, Y: p.centre.Y + y, Z: p.centre.Z + z}
	x, z := centreOfTurn(side.v.X, 1, -side.omega.Y)
	out.SideCentre = Vec{X: p.centre.X + x, Y: p.centre.Y, Z: p.centre.Z + z}

	out.Contact = p.contact
	arm := r3.Sub(out.Contact, p.centre)
	f, s := front.velocity(arm), side.velocity(arm)
	k := 1 / front.v.Z
	out.ContactRate = Vec{X: s.X, Y: k * f.Y, Z: k * f.Z}
	out.RollCentreHeight = f.Y / f.Z * out.Contact.Y
}

// mirror turns the places of a wheel that was measured as a left one.
func (n *Instant) mirror(s Side) {
	if s == Left {
		return
	}
	n.FrontCentre, n.SideCentre = s.Mirrored(n.FrontCentre), s.Mirrored(n.SideCentre)
	n.Contact, n.ContactRate = s.Mirrored(n.Contact), s.Mirrored(n.ContactRate)
}

// blank marks what does not exist at a lock.
func (n *Instant) blank() {
	none := Vec{X: nan, Y: nan, Z: nan}
	*n = Instant{ToeRate: nan, CamberRate: nan, ToeCurvature: nan, RollCentreHeight: nan,
		FrontCentre: none, SideCentre: none, Contact: none, ContactRate: none}
}

// RollCentre is a place in front view.
type RollCentre struct {
	Y, Z   float64 // in vehicle axes, mm
	Height float64 // above the line through both contact points, mm
}

// NewRollCentre returns the kinematic roll centre of an axle: where the lines
// square to the velocities of its contact points meet in front view. For an
// independent suspension they are the lines from the contact points through the
// instant centres; for a solid axle the two meet where the beam itself turns. It
// is infinite or not a number where the lines are parallel.
func NewRollCentre(left, right *Instant) RollCentre {
	l, r := left.ContactRate, right.ContactRate
	det := l.Y*r.Z - l.Z*r.Y
	a := l.Y*left.Contact.Y + l.Z*left.Contact.Z
	b := r.Y*right.Contact.Y + r.Z*right.Contact.Z
	c := RollCentre{Y: (a*r.Z - b*l.Z) / det, Z: (l.Y*b - r.Y*a) / det}
	c.Height = c.Z - groundAt(c.Y, left.Contact, right.Contact)
	return c
}

// groundAt returns the height at y of the line through two contact points.
func groundAt(y float64, l, r Vec) float64 {
	if math.IsInf(y, 0) {
		return (l.Z + r.Z) / 2
	}
	return r.Z + (y-r.Y)/(l.Y-r.Y)*(l.Z-r.Z)
}
