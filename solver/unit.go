package solver

// unit is what is assembled and solved by itself: one corner of an independent
// suspension, always as a left one, or a whole solid axle. It says how points
// are joined; the points' places are kept apart from it.
type unit struct {
	points   []unitPoint
	rods     []rodSpec // the tie rod last; of an axle the drag link before it
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

// tieRod returns the index of the tie rod among the rods.
func (u *unit) tieRod() int { return len(u.rods) - 1 }

// dragLink returns the index of the drag link of an axle among the rods.
func (u *unit) dragLink() int { return len(u.rods) - 2 }

// reference returns the point about which the main body turns.
func (u *unit) reference(pts []dvec) dvec {
	o := pts[u.wheels[0].centre]
	if u.beam {
		o = o.plus(pts[u.wheels[1].centre]).times(constant(0.5))
	}
	return o
}
