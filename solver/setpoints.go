package solver

import "math"

// setpoints are the values that a unit's static position is solved for.
type setpoints struct {
	toe, camber, height [2]target // by wheel
	caster              target
}

// setpointsOf returns the setpoints of u: those that cs set, else those that the
// points after coordinate changes stand for.
func (u *unit) setpointsOf(d *Design, pts []dvec, cs []applied) setpoints {
	var s setpoints
	for i, w := range u.wheels {
		s.toe[i] = steady(constant(float64(d.Toe[w.side])))
		s.camber[i] = steady(constant(float64(d.Camber[w.side])))
		s.height[i] = steady(pts[w.centre].z())
	}
	s.caster = steady(u.caster(pts))
	for _, c := range bySpecificity(cs) {
		s.apply(u, c)
	}
	return s
}

// bySpecificity calls for changes of both sides before those of one, so that the
// latter have the last word.
func bySpecificity(cs []applied) []applied {
	var out []applied
	for _, one := range [2]bool{false, true} {
		for _, c := range cs {
			if c.Parameter.stage == setpointStage && (c.Sides != BothSides) == one {
				out = append(out, c)
			}
		}
	}
	return out
}

func steady(v dual) target { return target{from: v, to: v} }

func (s *setpoints) apply(u *unit, c applied) {
	if c.Parameter.set == casterSetpoint && u.touches(c.Change) {
		s.caster.to = c.setting(s.caster.to) // one of the whole unit
	}
	for i, w := range u.wheels {
		if !c.Sides.Includes(w.side) {
			continue
		}
		switch c.Parameter.set {
		case toeSetpoint:
			s.toe[i].to = c.setting(s.toe[i].to)
		case camberSetpoint:
			s.camber[i].to = c.setting(s.camber[i].to)
		case rideHeightSetpoint:
			s.height[i].to = s.height[i].to.less(c.amount())
		}
	}
}

// spinOf returns the unit spin axis of a wheel of the given toe and camber,
// pointing outboard.
func (w *wheelSpec) spinOf(toe, camber Angle) Vec {
	st, ct := math.Sincos(float64(toe))
	sc, cc := math.Sincos(float64(camber))
	return Vec{X: st * cc, Y: ct * cc * w.outboard(), Z: -sc}
}

// conditions returns the equations of the static position: the parts that keep
// their lengths and the setpoints that are held. pts are the points before any
// part is exchanged: lengths are theirs.
func (u *unit) conditions(h Hold, s *setpoints, pts []dvec) []condition {
	cs := make([]condition, 0, maxUnknowns)
	for i := range u.wheels {
		cs = append(cs, atHeight{i, s.height[i]})
	}
	cs = u.appendToe(cs, h, s, pts)
	return u.appendLocation(cs, h, s, pts)
}

// keep returns the condition that rod i has the length it has among pts.
func (u *unit) keep(i int, pts []dvec) keepsLength {
	r := u.rods[i]
	return keepsLength{r, pts[r.outer].less(pts[r.inner]).norm()}
}

// appendToe adds the toe of each wheel, or the rods that keep it: of an axle the
// drag link holds its own knuckle and the tie rod the other.
func (u *unit) appendToe(cs []condition, h Hold, s *setpoints, pts []dvec) []condition {
	if h&HoldToe != 0 {
		for i := range u.wheels {
			cs = append(cs, hasToe{i, s.toe[i]})
		}
		return cs
	}
	if u.beam {
		cs = append(cs, u.keep(u.dragLink(), pts))
	}
	return append(cs, u.keep(u.tieRod(), pts))
}

// appendLocation adds what locates the knuckle or the beam beside its height and
// toe: the rods and, in place of those that give way, camber and caster.
func (u *unit) appendLocation(cs []condition, h Hold, s *setpoints, pts []dvec) []condition {
	a := &u.adjuster
	for i := range u.located() {
		if !a.mount && (i == a.pair[0] || i == a.pair[1]) {
			continue
		}
		cs = append(cs, u.keep(i, pts))
	}
	if u.strut != nil && !a.mount {
		cs = append(cs, throughMount{lateral: false}, throughMount{lateral: true})
	}
	if u.beam {
		return u.appendBeam(cs, h, s, pts)
	}
	if h&HoldCamber != 0 {
		cs = append(cs, hasCamber{0, s.camber[0]})
	}
	if h&HoldCaster != 0 {
		cs = append(cs, hasCaster{s.caster})
	}
	return u.appendPair(cs, h, pts)
}

// located returns the number of rods that locate the body: all but tie rod and
// drag link.
func (u *unit) located() int {
	if u.beam {
		return u.dragLink()
	}
	return u.tieRod()
}

// appendBeam adds caster, or the links that keep it.
func (u *unit) appendBeam(cs []condition, h Hold, s *setpoints, pts []dvec) []condition {
	p := u.adjuster.pair
	first, second := u.keep(p[0], pts), u.keep(p[1], pts)
	two := p[0] != p[1]
	switch {
	case h&HoldCaster != 0 && two:
		return append(cs, hasCaster{s.caster}, changeTogether{first, second, false})
	case h&HoldCaster != 0:
		return append(cs, hasCaster{s.caster})
	case two:
		return append(cs, first, second)
	}
	return append(cs, first)
}

// appendPair adds the relations between the two adjusted constraints that remain
// where camber, caster or both float. Where camber alone is held both change
// alike; where caster alone is held they change oppositely.
func (u *unit) appendPair(cs []condition, h Hold, pts []dvec) []condition {
	camber, caster := h&HoldCamber != 0, h&HoldCaster != 0
	if camber && caster {
		return cs
	}
	if u.adjuster.mount {
		if !caster {
			cs = append(cs, throughMount{lateral: false})
		}
		if !camber {
			cs = append(cs, throughMount{lateral: true})
		}
		return cs
	}
	first, second := u.keep(u.adjuster.pair[0], pts), u.keep(u.adjuster.pair[1], pts)
	if !camber && !caster {
		return append(cs, first, second)
	}
	return append(cs, changeTogether{first, second, caster})
}
