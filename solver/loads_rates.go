package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Rates sets out to the derivatives of the forces of side s in a load case by the
// parameters of some tangents of the axle: exact, all that the setpoints move with them.
// Bolts have none. It returns false where there are no forces.
//
// The links, the pose and the equations of forces are one after the other
// differentiated as what they are made of moves: J·δ = -∂f/∂p for the pose, then
// A·dF = dw - dA·F for the forces.
func (k *Statics) Rates(ws *Workspace, in *LoadCase, s Side, by *Tangents, out []Forces) bool {
	x := k.axle
	clear(out)
	switch {
	case x.checkSteer(in.Steer) != nil:
		return false
	case x.beam != nil:
		return k.beamRates(ws, in, s, by, out)
	}
	load := in.Wheels[s].mirrored(s)
	var now Forces
	if load.idle() {
		return true
	}
	if k.balance(ws, in, s, &load, &now) != nil {
		return false
	}
	r := loadRater{
		forceRater: forceRater{Statics: k, by: by, unit: int(s), st: x.static[s], rot: &ws.corner.eq.at.r, shift: ws.corner.gear.still},
		s:          s, e: &ws.corner.eq, load: load, balance: &ws.tracer.lu, forces: ws.tracer.f,
	}
	if !r.factor() {
		return false
	}
	sweep := SweepInput{By: by, From: in.Attitude}
	for i := range out {
		r.take(i, x.shiftRate(&sweep, s, i))
		r.differentiate(&out[i])
	}
	return true
}

// forceRater is what a knuckle and a beam have in common where forces are differentiated.
type forceRater struct {
	*Statics
	by    *Tangents
	unit  int
	st    *staticUnit
	rot   *rotation // of the pose
	shift Vec       // of the inner ball by the steering

	// Of one parameter:
	param  *Change
	t      *tangent
	inner  dvec // displacement of the inner ball by the steering
	centre dvec // reference point of the static position
	omega  Vec  // of the pose
	static Vec  // and of the static position
}

// take makes parameter i the one to differentiate by, the pose at rest.
func (r *forceRater) take(i int, shift Vec) {
	r.param, r.t, r.inner = &r.by.params[i], &r.by.units[r.unit][i], dvec{r.shift, shift}
	r.omega = Vec{}
	w := r.st.u.wheels
	r.centre = r.point(w[0].centre)
	if r.st.u.beam {
		r.centre = r.centre.plus(r.point(w[1].centre)).times(constant(0.5))
	}
	r.static = spin(Vec{X: r.st.q[0], Y: r.st.q[1], Z: r.st.q[2]}, r.t.turn)
}

// point returns a hardpoint of the static position, and local one of the main body's from
// its reference point.
func (r *forceRater) point(i int) dvec { return dvec{r.st.pts[i], r.t.of(i)} }
func (r *forceRater) local(i int) dvec { return r.point(i).less(r.centre) }

// turn returns what is fixed in the main body as the pose has it, and back the other way.
func (r *forceRater) turn(v dvec) dvec {
	now := v.turned(r.rot)
	now.d = r3.Add(now.d, r3.Cross(r.omega, now.v))
	return now
}

func (r *forceRater) back(v dvec) dvec {
	return dvec{r.rot.back(v.v), r.rot.back(r3.Sub(v.d, r3.Cross(r.omega, v.v)))}
}

// loadRater differentiates the forces on one knuckle.
type loadRater struct {
	forceRater
	s       Side
	e       *cornerEquations
	load    WheelLoad
	balance *factors // of the equations of forces, and what they give
	forces  column
	pose    factors // of the constraints, by a movement of the knuckle
	at      dvec    // the wheel centre in the pose, by the parameter taken
}

// factor factors the constraints by a level movement of the knuckle.
func (r *loadRater) factor() bool {
	var m matrix
	for i := range r.e.w {
		w := &r.e.w[i]
		m[i] = column{w.force.X, w.force.Y, w.force.Z, w.moment.X, w.moment.Y, w.moment.Z}
	}
	m[cornerUnknowns][2] = 1
	return r.pose.factor(&m, freedoms)
}

// take makes parameter i the one to differentiate by: the pose follows it.
func (r *loadRater) take(i int, shift Vec) {
	r.forceRater.take(i, shift)
	r.at = dvec{r.e.at.w, r.centre.d}
	var b column
	for i := range r.e.w {
		b[i] = -r.residual(i)
	}
	r.pose.solve(&b, &b)
	r.at.d = r3.Add(r.at.d, Vec{X: b[0], Y: b[1], Z: b[2]})
	r.omega = Vec{X: b[3], Y: b[4], Z: b[5]}
}

// rod returns constraint i as a rod, nil where it is a strut's.
func (r *loadRater) rod(i int) *rodSpec {
	switch {
	case i == tieRow:
		return r.st.u.tie()
	case i < r.st.corner.n:
		return &r.st.u.rods[i]
	}
	return nil
}

// span returns a rod's outer ball from the wheel centre, and from there its inner one.
func (r *loadRater) span(i int, spec *rodSpec) (ball, rod dvec) {
	ball = r.turn(r.local(spec.outer))
	inner := r.point(spec.inner)
	if i == tieRow {
		inner = inner.plus(r.inner)
	}
	return ball, r.at.plus(ball).less(inner)
}

// pierce returns where the strut's axis passes its mount's plane, from the wheel centre,
// and its direction, not of length 1.
func (r *loadRater) pierce() (on, dir dvec) {
	spec := r.st.u.strut
	on = r.turn(r.local(spec.lower))
	dir = r.turn(r.point(spec.carried).less(r.point(spec.lower)))
	k := r.point(spec.top).less(r.at).less(on).z().over(dir.z())
	return on.plus(dir.times(k)), dir
}

// residual returns the rate of constraint i with the pose as it is.
func (r *loadRater) residual(i int) float64 {
	if spec := r.rod(i); spec != nil {
		_, rod := r.span(i, spec)
		return rod.norm().d - r.point(spec.outer).less(r.point(spec.inner)).norm().d
	}
	on, _ := r.pierce()
	off := r.at.plus(on).less(r.point(r.st.u.strut.top)).d
	if i == r.st.corner.n {
		return off.X
	}
	return off.Y
}

// dwrench is a [wrench] with its rate.
type dwrench struct{ force, moment dvec }

func dpull(f, at dvec) dwrench { return dwrench{f, at.cross(f)} }

// constraint returns the wrench of constraint i.
func (r *loadRater) constraint(i int) dwrench {
	if spec := r.rod(i); spec != nil {
		ball, rod := r.span(i, spec)
		return dpull(rod.unit(), ball)
	}
	on, dir := r.pierce()
	level := dir.times(constant(-1).over(dir.z()))
	if i == r.st.corner.n {
		return dpull(dvec{Vec{X: 1, Z: level.v.X}, Vec{Z: level.d.X}}, on)
	}
	return dpull(dvec{Vec{Y: 1, Z: level.v.Y}, Vec{Z: level.d.Y}}, on)
}

// acting returns a load about the wheel centre; e is the spin axis in the pose.
func (r *forceRater) acting(l *WheelLoad, e dvec) dwrench {
	w := dwrench{fixed(l.Force), fixed(l.Moment)}
	if l.AtCentre {
		return w
	}
	tip := dsquare(e, fixed(up)).unit().times(r.axle.radiusRate(r.param).scaled(-1))
	w.moment = w.moment.plus(tip.cross(w.force))
	return w
}

// spinning returns the spin axis of wheel i of the unit in the static position.
func (r *forceRater) spinning(i int) dvec {
	e := fixed(r.st.spins[i])
	if len(r.t.spins) > 0 {
		e.d = r.t.spins[i]
	}
	return e
}

// dsquare is [square] with its rate.
func dsquare(k, v dvec) dvec { return v.less(k.times(k.dot(v))) }

// push returns the wrench of the spring pushed together by 1 N.
func (r *loadRater) push() dwrench {
	m := r.sides[r.s].spring
	switch {
	case m == nil:
		on, dir := r.pierce()
		return dpull(dir.unit().times(constant(-math.Copysign(1, dir.v.Z))), on)
	case m.arm == nil:
		at := r.turn(r.fromReference(m.home))
		return dpull(r.at.plus(at).less(fixed(m.body)).unit(), at)
	}
	places := r.places()
	local := newDualFrame(places[m.arm.front], places[m.arm.rear], places[m.arm.ball]).into(fixed(m.home))
	ball := r.turn(r.local(m.arm.ball))
	f := newDualFrame(r.point(m.arm.front), r.point(m.arm.rear), r.at.plus(ball))
	at := f.from(local)
	moment := f.axes[0].dot(at.less(f.at).cross(at.less(fixed(m.body)).unit()))
	radius := f.axes[1].dot(r.at.plus(ball).less(f.at))
	return dpull(f.axes[2].times(moment.over(radius)), ball)
}

// places are those of the file's own position, which a coordinate moves.
func (r *forceRater) places() []dvec {
	w := r.axle.assembler.borrow(r.axle.changes, nil)
	defer r.axle.assembler.giveBack(w)
	cs := w.cs
	if r.param.Parameter.stage == pointStage {
		cs = append(cs, applied{Change: r.param, seed: true})
	}
	return append([]dvec(nil), w.move(r.unit, cs)...)
}

// fromReference is [staticUnit.fromReference] with its rate.
func (r *forceRater) fromReference(v Vec) dvec {
	o := r.st.u.reference(r.places())
	turn := cayley(Vec{X: r.st.q[0], Y: r.st.q[1], Z: r.st.q[2]})
	now := r.standing(fixed(v).less(o).turned(&turn))
	return now.plus(o).plus(dvec{Vec{X: r.st.q[3], Y: r.st.q[4], Z: r.st.q[5]}, r.t.shift}).less(r.centre)
}

// standing adds the turn of the static knuckle to the rate of what is fixed in it.
func (r *forceRater) standing(v dvec) dvec {
	return dvec{v.v, r3.Add(v.d, r3.Cross(r.static, v.v))}
}

// differentiate sets the rates of the forces by the parameter taken.
func (r *loadRater) differentiate(out *Forces) {
	a := r.acting(&r.load, r.turn(r.spinning(0)))
	force, moment := a.force.d, a.moment.d
	less := func(w *dwrench, by float64) {
		force, moment = axpy(-by, w.force.d, force), axpy(-by, w.moment.d, moment)
	}
	var tie dvec
	for i := range r.e.w {
		w := r.constraint(i)
		less(&w, r.forces[i])
		if i == tieRow {
			tie = w.force
		}
	}
	w := r.push()
	less(&w, -r.forces[springColumn])
	b := column{force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z}
	r.balance.solve(&b, &b)
	out.TieRod, out.Spring = b[tieRow], b[springColumn]
	pull := r.back(tie.times(dual{-r.forces[tieRow], -out.TieRod}))
	if r.sides[r.s].face != nil {
		r.face(pull, &out.Arm)
	}
	if d := r.sides[r.s].stud; d != nil {
		out.StudBending = r.bending(r.s, pull, r.standing(fixed(d.axis)))
	}
}

// bending returns the rate of what a force does to the stud of side s.
func (r *forceRater) bending(s Side, force, axis dvec) float64 {
	d := r.sides[s].stud
	across := dsquare(axis, force).norm()
	return across.times(dual{d.height, r.stackRate(s)}).d * 32 / (math.Pi * d.diameter * d.diameter * d.diameter)
}

// stackRate returns the rate of the size of the stack under the ball of side s: on no
// stack, as it grows upward.
func (r *forceRater) stackRate(s Side) float64 {
	if p := r.param; p.Parameter.stage != partStage || p.Parameter.move != studDirection || !p.Sides.Includes(s) {
		return 0
	}
	if r.axle.stack(s) < 0 {
		return -1
	}
	return 1
}

// face sets the rates of what the rod does to the arm.
func (r *loadRater) face(pull dvec, out *ArmForces) {
	f := r.sides[r.s].face
	normal := r.standing(fixed(f.normal))
	moment := r.local(r.st.u.tie().outer).less(r.fromReference(f.home)).cross(pull)
	*out = ArmForces{
		Pull: normal.dot(pull).d, Shear: dsquare(normal, pull).norm().d,
		Twist: normal.dot(moment).d, Bend: dsquare(normal, moment).norm().d,
	}
	if r.s == Right {
		out.Twist = 0 - out.Twist
	}
}

// dualFrame is an [armFrame] with its rate.
type dualFrame struct {
	at   dvec
	axes [3]dvec
}

func newDualFrame(front, rear, ball dvec) *dualFrame {
	k := front.less(rear).unit()
	out := dsquare(k, ball.less(rear)).unit()
	return &dualFrame{at: rear, axes: [3]dvec{k, out, k.cross(out)}}
}

func (f *dualFrame) into(v dvec) [3]dual {
	d := v.less(f.at)
	return [3]dual{d.dot(f.axes[0]), d.dot(f.axes[1]), d.dot(f.axes[2])}
}

func (f *dualFrame) from(c [3]dual) dvec {
	return f.at.plus(f.axes[0].times(c[0])).plus(f.axes[1].times(c[1])).plus(f.axes[2].times(c[2]))
}
