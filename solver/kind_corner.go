package solver

import "slices"

// cornerLayout joins a corner of an independent suspension: two of them make the
// axle. It is all that a kind of independent suspension has to state beside its
// hardpoints; points are called by their names. The tie rod and the wheel centre
// follow from the points' roles, an arm from two rods to one ball.
type cornerLayout struct {
	rods      []link   // that locate the knuckle: four, or two beside a strut
	strut     *slider  // nil where there is none
	axis      axisLink // what the wheel is steered about
	adjusters []gives  // what may take up camber and caster; the first is the default
}

// link is a rod from the body to the knuckle.
type link struct{ name, inner, outer string }

// slider is a strut: an axis of the knuckle through lower that slides through top.
type slider struct{ lower, top string }

// axisLink is a steering axis through two points; a screw axis has none.
type axisLink struct {
	kind         axisKind
	lower, upper string
}

// gives is an adjuster as a kind states it: the rods to some joints of the knuckle
// give way.
type gives struct {
	key, label string
	joints     []string
	pivots     bool // see [adjuster]
	mount      bool
}

func (l cornerLayout) units(d *Design) []*unit {
	return []*unit{l.unit(d, Left), l.unit(d, Right)}
}

func (l cornerLayout) unit(d *Design, s Side) *unit {
	k := d.Kind
	u := &unit{
		points: make([]unitPoint, 0, len(k.SidePoints)+1), // a strut carries one more
		rods:   make([]rodSpec, 0, len(l.rods)),
	}
	for _, p := range k.SidePoints {
		body := chassisBody
		if p.Body == Knuckle {
			body = mainBody
		}
		u.points = append(u.points, unitPoint{p, selectionOf(s), false, body})
	}
	for _, r := range l.rods {
		u.rods = append(u.rods, rodSpec{r.name, k.sidePoint(r.inner), k.sidePoint(r.outer)})
	}
	arm := withRole(k.SidePoints, TieRodOuterRole)[0]
	u.steer = []rodSpec{{"tie rod", withRole(k.SidePoints, TieRodInnerRole)[0], arm}}
	u.addArms()
	if l.strut != nil {
		u.strut = &strutSpec{lower: k.sidePoint(l.strut.lower), top: k.sidePoint(l.strut.top), carried: len(u.points)}
		u.points = append(u.points, unitPoint{Hardpoint{Body: Knuckle}, selectionOf(s), false, mainBody})
	}
	u.wheels = []wheelSpec{{
		side: s, body: mainBody, arm: arm, centre: withRole(k.SidePoints, WheelCentreRole)[0],
		axis: axisSpec{l.axis.kind, k.sidePoint(l.axis.lower), k.sidePoint(l.axis.upper)},
	}}
	u.adjuster = u.adjusterOf(l.adjusterOf(d.Adjuster))
	return u
}

func (l cornerLayout) outline(k *Kind) Outline {
	o := Outline{Axis: [2]int{k.sidePoint(l.axis.lower), k.sidePoint(l.axis.upper)}}
	for _, r := range l.rods {
		o.Rods = append(o.Rods, OutlineRod{k.sidePoint(r.inner), k.sidePoint(r.outer)})
	}
	if l.strut != nil {
		o.Strut = [2]int{k.sidePoint(l.strut.lower), k.sidePoint(l.strut.top)}
	}
	return o
}

// sidePoint returns the index of a side's hardpoint, 0 for no name.
func (k *Kind) sidePoint(name string) int {
	for i, p := range k.SidePoints {
		if p.Name == name {
			return i
		}
	}
	if name != "" {
		panic("solver: " + k.Name + " has no point " + name) // a fault of the kind's own file
	}
	return 0
}

// addArms finds the arms: two rods to a ball of the lower or the upper role. The
// second of two arms on one hinge is the first, whose end a kingpin makes two.
func (u *unit) addArms() {
	for i, role := range [2]Role{LowerBallRole, UpperBallRole} {
		legs := u.rodsTo(func(p *unitPoint) bool { return p.Role == role })
		if len(legs) != 2 {
			continue
		}
		first, second := &u.rods[legs[0]], &u.rods[legs[1]]
		u.arms = append(u.arms, armSpec{
			carries: [2]Carrier{OnLowerArm, OnUpperArm}[i],
			first:   legs[0], second: legs[1],
			front: first.inner, rear: second.inner, ball: first.outer,
		})
	}
	if u.hinged() {
		u.arms[1].carries = OnUpright
	}
}

// hinged reports whether both arms are one, on a hinge of its own.
func (u *unit) hinged() bool {
	return len(u.arms) == 2 && u.arms[0].front == u.arms[1].front && u.arms[0].rear == u.arms[1].rear
}

// rodsTo returns the rods, by their indices, to points of the knuckle.
func (u *unit) rodsTo(points func(*unitPoint) bool) (rods []int) {
	for i := range u.rods {
		if points(&u.points[u.rods[i].outer]) {
			rods = append(rods, i)
		}
	}
	return rods
}

// adjusterOf returns the adjuster called key, or the default.
func (l cornerLayout) adjusterOf(key string) *gives {
	for i := range l.adjusters {
		if l.adjusters[i].key == key {
			return &l.adjusters[i]
		}
	}
	return &l.adjusters[0]
}

// adjusterOf returns an adjuster by the rods that give way.
func (u *unit) adjusterOf(g *gives) adjuster {
	a := adjuster{pivots: g.pivots, mount: g.mount}
	legs := u.rodsTo(func(p *unitPoint) bool { return slices.Contains(g.joints, p.Name) })
	copy(a.pair[:], legs)
	return a
}

func selectionOf(s Side) Selection {
	if s == Right {
		return RightOnly
	}
	return LeftOnly
}
