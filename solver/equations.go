package solver

// equations are the conditions of a unit's static position, in memory of their
// own.
type equations struct {
	list []condition // in memory

	memory   [maxUnknowns]condition
	rods     [maxUnknowns]keepsLength
	kept     int // rods in use
	heights  [2]atHeight
	toes     [2]hasToe
	lengths  [2]hasLength
	camber   hasCamber
	caster   hasCaster
	mounts   [2]throughMount
	together changeTogether
}

// set makes e the equations of u: the parts that keep their lengths and the
// setpoints that are held. pts are the points before any part is exchanged:
// lengths are theirs.
func (e *equations) set(u *unit, h Hold, s *setpoints, pts []dvec) {
	e.list, e.kept = e.memory[:0], 0
	for i := range u.wheels {
		e.heights[i] = atHeight{i, s.height[i]}
		e.add(&e.heights[i])
	}
	e.addToe(u, h, s)
	e.addLocation(u, h, s, pts)
}

func (e *equations) add(c condition) { e.list = append(e.list, c) }

// rod returns the condition that rod i has the length it has among pts.
func (e *equations) rod(u *unit, i int, pts []dvec) *keepsLength {
	r := &u.rods[i]
	k := &e.rods[e.kept]
	e.kept++
	*k = keepsLength{*r, pts[r.outer].less(pts[r.inner]).norm()}
	return k
}

// addToe adds the toe of each wheel, or the rods that set it.
func (e *equations) addToe(u *unit, h Hold, s *setpoints) {
	if h&HoldToe != 0 {
		for i := range u.wheels {
			e.toes[i] = hasToe{i, s.toe[i]}
			e.add(&e.toes[i])
		}
		return
	}
	for _, rod := range u.steeringRods() {
		e.lengths[rod] = hasLength{u.steer[rod], s.rods[rod]}
		e.add(&e.lengths[rod])
	}
}

// addLocation adds what locates the knuckle or the beam beside its height and
// toe: the rods and, in place of those that give way, camber and caster.
func (e *equations) addLocation(u *unit, h Hold, s *setpoints, pts []dvec) {
	a := &u.adjuster
	for i := range u.rods {
		if !a.mount && (i == a.pair[0] || i == a.pair[1]) {
			continue
		}
		e.add(e.rod(u, i, pts))
	}
	if u.strut != nil && !a.mount {
		e.addMount(false)
		e.addMount(true)
	}
	if u.beam {
		e.addBeam(u, h, s, pts)
		return
	}
	if h&HoldCamber != 0 {
		e.camber = hasCamber{0, s.camber[0]}
		e.add(&e.camber)
	}
	if h&HoldCaster != 0 {
		e.addCaster(s)
	}
	e.addPair(u, h, pts)
}

func (e *equations) addCaster(s *setpoints) {
	e.caster = hasCaster{s.caster}
	e.add(&e.caster)
}

// addMount holds the strut's axis on its mount, sideways or fore and aft.
func (e *equations) addMount(lateral bool) {
	m := &e.mounts[0]
	if lateral {
		m = &e.mounts[1]
	}
	m.lateral = lateral
	e.add(m)
}

// addBeam adds caster, or the links that keep it.
func (e *equations) addBeam(u *unit, h Hold, s *setpoints, pts []dvec) {
	p := u.adjuster.pair
	caster, two := h&HoldCaster != 0, p[0] != p[1]
	if caster {
		e.addCaster(s)
	}
	switch {
	case caster && two:
		e.addTogether(u, pts, false)
	case two:
		e.add(e.rod(u, p[0], pts))
		e.add(e.rod(u, p[1], pts))
	case !caster:
		e.add(e.rod(u, p[0], pts))
	}
}

// addTogether relates the two rods of the adjuster.
func (e *equations) addTogether(u *unit, pts []dvec, opposite bool) {
	p := u.adjuster.pair
	e.together = changeTogether{e.rod(u, p[0], pts), e.rod(u, p[1], pts), opposite}
	e.add(&e.together)
}

// addPair adds the relations between the two adjusted constraints that remain
// where camber, caster or both float. Where camber alone is held both change
// alike; where caster alone is held they change oppositely.
func (e *equations) addPair(u *unit, h Hold, pts []dvec) {
	camber, caster := h&HoldCamber != 0, h&HoldCaster != 0
	switch {
	case camber && caster:
	case u.adjuster.mount:
		if !caster {
			e.addMount(false)
		}
		if !camber {
			e.addMount(true)
		}
	case camber || caster:
		e.addTogether(u, pts, caster)
	default:
		e.add(e.rod(u, u.adjuster.pair[0], pts))
		e.add(e.rod(u, u.adjuster.pair[1], pts))
	}
}
