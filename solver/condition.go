package solver

// condition is an equation that a static position meets: a part that keeps its
// size, or a setpoint. Its value is a length in mm, 0 when met, with its rate.
type condition interface {
	value(c *configuration) dual
	// link names the part or the setpoint in messages.
	link() string
}

// angleArm is the length, in mm, at which an angle's error counts as a length:
// about a wheel's radius.
const angleArm = 300.0

// keepsLength holds two points a length apart.
type keepsLength struct {
	rodSpec
	length dual
}

func (k *keepsLength) link() string { return k.name }

func (k *keepsLength) value(c *configuration) dual {
	d := c.pts[k.outer].less(c.pts[k.inner])
	return d.dot(d).less(k.length.times(k.length)).over(k.length.scaled(2))
}

// change returns by how much longer the rod has become.
func (k *keepsLength) change(c *configuration) dual {
	return c.pts[k.outer].less(c.pts[k.inner]).norm().less(k.length)
}

// changeTogether lets two rods change length by the same amount, or by opposite
// amounts: the relation that is left when one setpoint of two is held.
type changeTogether struct {
	first, second *keepsLength
	opposite      bool
}

func (k *changeTogether) link() string { return k.first.name }

func (k *changeTogether) value(c *configuration) dual {
	a, b := k.first.change(c), k.second.change(c)
	if k.opposite {
		return a.plus(b)
	}
	return a.less(b)
}

// throughMount holds the strut's axis on its mount, fore and aft or sideways.
type throughMount struct {
	lateral bool
}

func (*throughMount) link() string { return "strut" }

func (k *throughMount) value(c *configuration) dual {
	d := c.u.pierce(c.pts).less(c.pts[c.u.strut.top])
	if k.lateral {
		return d.y()
	}
	return d.x()
}

// target is a setpoint on its way from the old to the new value.
type target struct{ from, to dual }

func (t target) at(blend dual) dual { return t.from.plus(t.to.less(t.from).times(blend)) }

// hasToe holds the toe angle of a wheel.
type hasToe struct {
	wheel int
	target
}

func (*hasToe) link() string { return "toe" }

func (k *hasToe) value(c *configuration) dual {
	e, t := c.spins[k.wheel], k.at(c.blend)
	y := e.y().scaled(c.u.wheels[k.wheel].outboard())
	return e.x().times(t.cos()).less(y.times(t.sin())).scaled(angleArm)
}

// hasCamber holds the camber angle of a wheel.
type hasCamber struct {
	wheel int
	target
}

func (*hasCamber) link() string { return "camber" }

func (k *hasCamber) value(c *configuration) dual {
	return c.spins[k.wheel].z().plus(k.at(c.blend).sin()).scaled(angleArm)
}

// hasCaster holds the caster angle of a wheel or, of an axle, the mean of both.
type hasCaster struct{ target }

func (*hasCaster) link() string { return "caster" }

func (k *hasCaster) value(c *configuration) dual {
	return c.caster().less(k.at(c.blend)).scaled(angleArm)
}

// caster returns the caster angle of a corner, or the mean of an axle's two.
func (u *unit) caster(pts []dvec) dual {
	var sum dual
	for i := range u.wheels {
		_, dir := u.steeringAxis(&u.wheels[i], pts)
		sum = sum.plus(casterOf(dir))
	}
	return sum.scaled(1 / float64(len(u.wheels)))
}

// atHeight holds a wheel centre at its height above the body's datum.
type atHeight struct {
	wheel int
	target
}

func (*atHeight) link() string { return "ride height" }

func (k *atHeight) value(c *configuration) dual {
	return c.pts[c.u.wheels[k.wheel].centre].z().less(k.at(c.blend))
}
