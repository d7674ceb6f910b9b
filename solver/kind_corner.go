package solver

// cornerLayout joins a corner of an independent suspension: two of them make the
// axle. It is all that a kind of independent suspension has to state.
type cornerLayout struct {
	rods       []rodSpec // by indices of the kind's side points; the tie rod last
	strut      *strutSpec
	wheel, arm int
	axis       axisSpec
	adjusters  []adjuster // the first is the default
}

func (l cornerLayout) units(d *Design) []*unit {
	return []*unit{l.unit(d, Left), l.unit(d, Right)}
}

func (l cornerLayout) unit(d *Design, s Side) *unit {
	u := &unit{rods: l.rods}
	for _, p := range d.Kind.SidePoints {
		body := chassisBody
		if p.Body == Knuckle {
			body = mainBody
		}
		u.points = append(u.points, unitPoint{p, selectionOf(s), false, body})
	}
	if l.strut != nil {
		u.strut = &strutSpec{lower: l.strut.lower, top: l.strut.top, carried: len(u.points)}
		u.points = append(u.points, unitPoint{Hardpoint{Body: Knuckle}, selectionOf(s), false, mainBody})
	}
	u.wheels = []wheelSpec{{side: s, body: mainBody, centre: l.wheel, arm: l.arm, axis: l.axis}}
	u.adjuster = l.adjuster(d.Adjuster)
	return u
}

// adjuster returns the adjuster called key, or the default.
func (l cornerLayout) adjuster(key string) adjuster {
	for _, a := range l.adjusters {
		if a.key == key {
			return a
		}
	}
	return l.adjusters[0]
}

func selectionOf(s Side) Selection {
	if s == Right {
		return RightOnly
	}
	return LeftOnly
}
