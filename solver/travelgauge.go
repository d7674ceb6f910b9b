package solver

import (
	"fmt"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// TravelReading is the way in which a wheel's travel is read on the car.
type TravelReading uint8

// What is read, each in mm: the height of the wheel centre or the hub over the
// body; the height of the blocks under the body while the wheels stay on the
// ground, which falls in bump; the damper's length between its mounts, which gets
// shorter in bump on most cars; the height of the lower ball joint over the body; the
// height over the body of the tyre's contact, the lowest point of the wheel's plane
// at the tyre's radius.
const (
	WheelCentreReading TravelReading = iota
	BlockReading
	DamperReading
	LowerBallReading
	ContactReading
)

// TravelGauge says what a reading of travel means on one side of a car.
type TravelGauge struct {
	Reading TravelReading
	// Zero is what is read at travel 0, mm. A damper's length needs none: it
	// follows from the mounts.
	Zero   float64
	Damper Damper
}

// Carrier is the part of the suspension that carries a damper's lower mount.
type Carrier uint8

// The carriers of dampers. OnUpright is the knuckle, or the beam of a solid axle.
const (
	OnUpright Carrier = iota
	OnLowerArm
	OnUpperArm
)

// String returns the carrier's name in study files.
func (c Carrier) String() string { return [...]string{"knuckle", "lower-arm", "upper-arm"}[c] }

// Damper is a damper's two mounts in vehicle axes, in the static position of the
// design as measured.
type Damper struct {
	Body, Wheel Vec
	On          Carrier
}

// ReadTravel returns what a gauge on side s reads when the wheel, and that of the
// other side with it, has a travel in mm. It returns a [*ReachError] where the
// linkage cannot be moved there and an [*InputError] for a gauge that the
// suspension has no part for.
func (x *Axle) ReadTravel(ws *Workspace, s Side, g *TravelGauge, travel float64) (float64, error) {
	switch g.Reading {
	case WheelCentreReading:
		return g.Zero + travel, nil
	case BlockReading:
		return g.Zero - travel, nil
	}
	probe, err := x.probe(s, g)
	if err != nil {
		return 0, err
	}
	return probe.read(x, ws, travel)
}

// travelProbe is a point whose place is read: its distance from another, or its
// height.
type travelProbe struct {
	gauge *TravelGauge
	side  Side
	mount         // of a damper; of the lower ball joint its place alone
	home  float64 // height of the point at travel 0, mm
}

// mount is where a damper or a spring stands: on the body, and on a part that moves.
type mount struct {
	body  Vec      // in the unit's frame
	home  Vec      // of the point that moves, in the design
	local Vec      // of the point that moves: on an arm in the arm's frame, else from the reference point
	arm   *armSpec // nil where the upright carries it
}

// probe returns how the gauge of side s is read.
func (x *Axle) probe(s Side, g *TravelGauge) (*travelProbe, error) {
	p := &travelProbe{gauge: g, side: s}
	st, places := x.unitOf(s)
	switch g.Reading {
	case ContactReading:
		return p, nil
	case LowerBallReading:
		// The ball that is read is the one fitted, which a taller pin has moved in
		// the knuckle.
		i, err := st.u.lowerBall(s)
		if err != nil {
			return nil, err
		}
		p.local, p.home = r3.Sub(st.pts[i], st.u.reference(fixedAll(st.pts)).v), st.pts[i].Z
		return p, nil
	}
	var err error
	p.mount, err = st.mount(s, g.Damper, places, "damper")
	return p, err
}

// mount returns where a damper or a spring, which messages call key, stands on side s.
func (st *staticUnit) mount(s Side, d Damper, places []dvec, key string) (m mount, err error) {
	body, wheel := d.Body, d.Wheel
	if !st.u.beam {
		body, wheel = s.Mirrored(body), s.Mirrored(wheel)
	}
	m.body, m.home = body, wheel
	if m.arm, err = st.u.armOf(d.On, key); err != nil {
		return m, err
	}
	if m.arm != nil {
		f := m.arm.frame(values(places))
		m.local = f.into(wheel)
		return m, nil
	}
	m.local = st.fromReference(wheel, places)
	return m, nil
}

// unitOf returns the static position of the unit of side s, and the places that its
// points have in the file's own position: those of the design with the coordinates
// changed, before parts and setpoints.
func (x *Axle) unitOf(s Side) (*staticUnit, []dvec) {
	i := min(int(s), len(x.static)-1)
	w := x.assembler.borrow(x.changes, nil)
	defer x.assembler.giveBack(w)
	return x.static[i], slices.Clone(w.move(i, w.cs))
}

// fromReference returns the place, from the reference point of the upright in the
// static position, of what stands at v in the design and moves with the upright.
func (s *staticUnit) fromReference(v Vec, places []dvec) Vec {
	r := cayley(Vec{X: s.q[0], Y: s.q[1], Z: s.q[2]})
	o := s.u.reference(places).v
	now := r3.Add(r3.Add(o, Vec{X: s.q[3], Y: s.q[4], Z: s.q[5]}), r.turn(r3.Sub(v, o)))
	return r3.Sub(now, s.u.reference(fixedAll(s.pts)).v)
}

func fixedAll(pts []Vec) []dvec {
	out := make([]dvec, len(pts))
	for i, p := range pts {
		out[i] = fixed(p)
	}
	return out
}

// lowerBall returns the index of the lower ball joint of side s.
func (u *unit) lowerBall(s Side) (int, error) {
	for i := range u.points {
		if p := &u.points[i]; p.Role == LowerBallRole && p.selection.Includes(s) {
			return i, nil
		}
	}
	return 0, &InputError{"travelAs", "lower-ball-joint needs a suspension with one; use wheel-centre, contact, block or damper"}
}

// armOf returns the arm that carries a damper or a spring, nil for the upright.
func (u *unit) armOf(c Carrier, key string) (*armSpec, error) {
	if c == OnUpright {
		return nil, nil
	}
	for i := range u.arms {
		if a := &u.arms[i]; a.carries == c {
			return a, nil
		}
	}
	return nil, &InputError{key, fmt.Sprintf("stands on an arm (%s) that this suspension has not; put it on the knuckle", c)}
}
