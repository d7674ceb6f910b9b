package solver

import "gonum.org/v1/gonum/spatial/r3"

// beam is a solid axle in its static position: a beam on four links, a knuckle
// on a kingpin at each end, a drag link from the gear to one knuckle, a tie rod
// between both. It is never changed once built.
type beam struct {
	o     Vec // reference point of the beam: midway between the wheel centres
	links [4]rod
	drag  rod // b from the foot of its kingpin
	pulls int // the knuckle that the drag link pulls: 0 left, 1 right
	tie   float64
	ends  [2]kingpin
	// triple is that by which its equations are solved.
	triple beamTriple
}

// kingpin is one end of the beam with its knuckle, straight ahead.
type kingpin struct {
	foot   Vec // lower end, from the beam's reference point
	dir    Vec // unit direction, upward
	rise   Vec // upper end from the lower
	wheel  Vec // wheel centre, from the foot
	height float64
	arm    Vec // tie rod ball, from the foot
	spin   Vec // unit spin axis, outboard
}

// beamUnknowns is the size of an axle's system: rotation and place of the beam
// and the turns of both kingpins.
const beamUnknowns = 8

// beamPath is the system of an axle moved along a straight path of the travels of
// both wheels and the steering.
type beamPath struct {
	b          *beam
	gear       gearPath
	from, rate [2]float64 // travel of each wheel, mm, and its change by s
}

func (p *beamPath) size() int { return beamUnknowns }

// axlePose is a position of the axle, with what its equations need.
type axlePose struct {
	r    rotation
	g    Vec
	move Vec
	ends [2]endPose
}

// endPose is one end of the axle: points from the moved reference point.
type endPose struct {
	h          float64
	foot, dir  Vec
	wheel, arm Vec
}

func (b *beam) poseOf(q *state) (p axlePose) {
	b.pose(q, &p)
	return p
}

// pose sets p to the pose of the unknowns q.
func (b *beam) pose(q *state, p *axlePose) {
	p.g = Vec{X: q[0], Y: q[1], Z: q[2]}
	p.r.cayley(p.g)
	p.move = Vec{X: q[3], Y: q[4], Z: q[5]}
	for i := range p.ends {
		k, e := &b.ends[i], &p.ends[i]
		e.h = q[6+i]
		e.foot, e.dir = p.r.turn(k.foot), p.r.turn(k.dir)
		e.wheel = r3.Add(e.foot, p.r.turn(about(k.dir, k.wheel, e.h)))
		e.arm = r3.Add(e.foot, p.r.turn(about(k.dir, k.arm, e.h)))
	}
}

// at returns the place in V of a point given from the moved reference point.
func (b *beam) at(p *axlePose, x Vec) Vec { return r3.Add(r3.Add(b.o, p.move), x) }

// dragOuter returns the drag link's ball on the knuckle, from the moved
// reference point.
func (b *beam) dragOuter(p *axlePose) Vec {
	k, e := &b.ends[b.pulls], &p.ends[b.pulls]
	return r3.Add(e.foot, p.r.turn(about(k.dir, b.drag.b, e.h)))
}

func (p *beamPath) residual(q *state, s float64, f *column) {
	b := p.b
	at := b.poseOf(q)
	for i := range b.links {
		r := &b.links[i]
		f[i] = r.stretch(r3.Sub(b.at(&at, at.r.turn(r.b)), r.a))
	}
	shift, _ := p.gear.shift(s)
	f[4] = b.drag.stretch(r3.Sub(r3.Sub(b.at(&at, b.dragOuter(&at)), b.drag.a), shift))
	d := r3.Sub(at.ends[0].arm, at.ends[1].arm)
	f[5] = (r3.Dot(d, d) - b.tie*b.tie) / (2 * b.tie)
	for i := range at.ends {
		f[6+i] = p.heightError(&at, i, s)
	}
}

// heightError returns by how much wheel i stands too high, mm.
func (p *beamPath) heightError(at *axlePose, i int, s float64) float64 {
	return p.b.o.Z + at.move.Z + at.ends[i].wheel.Z - p.b.ends[i].height - p.from[i] - s*p.rate[i]
}

func (p *beamPath) linearise(q *state, s float64, f *column, jac *matrix, rate *column) {
	b := p.b
	at := b.poseOf(q)
	*rate = column{}
	for i := range b.links {
		r := &b.links[i]
		arm := at.r.turn(r.b)
		d := r3.Sub(b.at(&at, arm), r.a)
		f[i] = r.stretch(d)
		at.row(pull(r3.Scale(r.inv, d), arm), &jac[i])
	}
	p.lineariseDrag(&at, s, f, jac, rate)
	p.lineariseTie(&at, f, jac)
	for i := range at.ends {
		f[6+i] = p.heightError(&at, i, s)
		at.row(pull(up, at.ends[i].wheel), &jac[6+i])
		jac[6+i][6+i] = at.ends[i].swing(up, at.ends[i].wheel)
		rate[6+i] = -p.rate[i]
	}
}

func (p *beamPath) lineariseDrag(at *axlePose, s float64, f *column, jac *matrix, rate *column) {
	b := p.b
	shift, moving := p.gear.shift(s)
	x := b.dragOuter(at)
	d := r3.Sub(r3.Sub(b.at(at, x), b.drag.a), shift)
	f[4] = b.drag.stretch(d)
	force := r3.Scale(b.drag.inv, d)
	at.row(pull(force, x), &jac[4])
	jac[4][6+b.pulls] = at.ends[b.pulls].swing(force, x)
	rate[4] = -r3.Dot(force, moving)
}

func (p *beamPath) lineariseTie(at *axlePose, f *column, jac *matrix) {
	l, left, right := p.b.tie, &at.ends[0], &at.ends[1]
	d := r3.Sub(left.arm, right.arm)
	f[5] = (r3.Dot(d, d) - l*l) / (2 * l)
	force := r3.Scale(1/l, d)
	at.row(wrench{moment: r3.Cross(d, force)}, &jac[5]) // equal and opposite pulls: the beam feels none but rounding
	jac[5][6] = left.swing(force, left.arm)
	jac[5][7] = -right.swing(force, right.arm)
}

// row writes a wrench as a row over the beam's unknowns, the kingpins at rest.
func (p *axlePose) row(w wrench, row *column) {
	g := pullback(p.g, w.moment)
	*row = column{g.X, g.Y, g.Z, w.force.X, w.force.Y, w.force.Z}
}

// swing returns the derivative by the kingpin's unknown of a force at x.
func (e *endPose) swing(force, x Vec) float64 {
	return 2 / (1 + e.h*e.h) * r3.Dot(e.dir, r3.Cross(r3.Sub(x, e.foot), force))
}
