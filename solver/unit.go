package solver

// unit is what is assembled and solved by itself: one corner of an independent
// suspension, always as a left one, or a whole solid axle. It says how points
// are joined; the points' places are kept apart from it.
type unit struct {
	points   []unitPoint
	rods     []rodSpec // that locate the knuckle or the beam
	steer    []rodSpec // that set toe, by steeringRod: of a corner the tie rod alone
	arms     []armSpec // what two of the rods make where they share a ball
	strut    *strutSpec
	wheels   []wheelSpec
	adjuster adjuster
	beam     bool     // the bodies are a beam and two knuckles on kingpins
	free     pointSet // points on which no more than rods that set toe hang
}

// unitPoint is a hardpoint of a unit.
type unitPoint struct {
	Hardpoint
	selection Selection // the side it belongs to; both for a point of the axle
	flipped   bool      // outboard is -y in the unit's frame
	body      int       // index of its body: 0 is the chassis, or moves with the gear
}

// bodies of a unit.
const (
	chassisBody = 0
	mainBody    = 1 // knuckle of a corner, beam of an axle
	leftBody    = 2 // knuckles of an axle
	rightBody   = 3
)

// rodSpec joins two points of a unit by a rigid link.
type rodSpec struct {
	name         string // as messages name it
	inner, outer int
}

// armSpec is a rigid arm that turns on two pivots of the body: two rods to one ball.
type armSpec struct {
	carries           Carrier // what a damper or a spring calls it
	first, second     int     // its rods
	front, rear, ball int     // its points
}

// strutSpec is a knuckle-fixed axis through the points lower and carried that
// slides through the body point top. carried starts where top is.
type strutSpec struct {
	lower, carried, top int
}

// wheelSpec is a wheel of a unit and its steering axis.
type wheelSpec struct {
	side    Side
	flipped bool // outboard is -y in the unit's frame
	body    int
	centre  int
	arm     int // the tie rod's outer ball
	axis    axisSpec
}

// axisSpec says what the steering axis of a wheel passes through.
type axisSpec struct {
	kind         axisKind
	lower, upper int
}

// outboard returns +1 where outboard is +y in the unit's frame, else -1.
func (w *wheelSpec) outboard() float64 {
	if w.flipped {
		return -1
	}
	return 1
}

// tie returns the tie rod.
func (u *unit) tie() *rodSpec { return &u.steer[tieRodRod] }

// geared returns the rod that the gear moves: a corner's tie rod, an axle's drag link.
func (u *unit) geared() *rodSpec { return &u.steer[len(u.steer)-1] }

// links visits every rod of u until visit returns an error.
func (u *unit) links(visit func(*rodSpec) error) error {
	for _, rods := range [2][]rodSpec{u.rods, u.steer} {
		for i := range rods {
			if err := visit(&rods[i]); err != nil {
				return err
			}
		}
	}
	return nil
}

// reference returns the point about which the main body turns.
func (u *unit) reference(pts []dvec) dvec {
	o := pts[u.wheels[0].centre]
	if u.beam {
		o = o.plus(pts[u.wheels[1].centre]).times(constant(0.5))
	}
	return o
}
