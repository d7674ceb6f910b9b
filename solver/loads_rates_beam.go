package solver

import "gonum.org/v1/gonum/spatial/r3"

// beamRater differentiates the forces in a solid axle: the eight of its links, rods and
// springs, which do the work of the loads in every movement of beam and kingpins.
type beamRater struct {
	forceRater
	b      *beam
	pose   axlePose
	forces column
	// The constraints, and with springs in place of heights the equations of forces, by a
	// movement of the beam and turns of the kingpins.
	moves, balance factors

	// Of one parameter:
	at    dvec       // the reference point in the pose
	turns [2]float64 // of the kingpins, rad
}

// beamRates is [Statics.Rates] of a solid axle.
func (k *Statics) beamRates(ws *Workspace, in *LoadCase, s Side, by *Tangents, out []Forces) bool {
	x := k.axle
	if in.Wheels[Left].idle() && in.Wheels[Right].idle() {
		return true
	}
	var now [2]Forces
	if k.beam(ws, in, &now) != nil {
		return false
	}
	r := beamRater{
		forceRater: forceRater{Statics: k, by: by, st: x.static[0], shift: ws.beam.gear.still},
		b:          x.beam, pose: x.beam.poseOf(&ws.origin), forces: ws.tracer.f,
	}
	r.rot = &r.pose.r
	if !r.factor() {
		return false
	}
	sweep := SweepInput{By: by, From: in.Attitude}
	for i := range out {
		r.take(i, x.shiftRate(&sweep, Left, i))
		r.differentiate(in, s, &out[i])
	}
	return true
}

// axleWrench is what a force does in a movement of the beam, and in turns of the kingpins.
type axleWrench struct {
	dwrench
	swing [2]dual
}

// factor factors both systems.
func (r *beamRater) factor() bool {
	r.rest(0, Vec{})
	var m matrix
	for i := range beamUnknowns {
		w := r.constraint(i)
		m[i] = w.values()
	}
	if !r.moves.factor(&m, beamUnknowns) {
		return false
	}
	for s := range r.b.ends {
		w := r.push(s)
		m[springRow+s] = w.values()
	}
	return r.balance.factor(&m, beamUnknowns)
}

func (w *axleWrench) values() column {
	f, m := w.force.v, w.moment.v
	return column{f.X, f.Y, f.Z, m.X, m.Y, m.Z, w.swing[0].v, w.swing[1].v}
}

func (w *axleWrench) rates() column {
	f, m := w.force.d, w.moment.d
	return column{f.X, f.Y, f.Z, m.X, m.Y, m.Z, w.swing[0].d, w.swing[1].d}
}

// rest takes parameter i with the pose at rest.
func (r *beamRater) rest(i int, shift Vec) {
	r.forceRater.take(i, shift)
	r.at, r.turns = dvec{r3.Add(r.b.o, r.pose.move), r.centre.d}, [2]float64{}
}

// take makes parameter i the one to differentiate by: the pose follows it.
func (r *beamRater) take(i int, shift Vec) {
	r.rest(i, shift)
	var b column
	for i := range beamUnknowns {
		b[i] = -r.residual(i)
	}
	r.moves.solve(&b, &b)
	r.at.d = r3.Add(r.at.d, Vec{X: b[0], Y: b[1], Z: b[2]})
	r.omega, r.turns = Vec{X: b[3], Y: b[4], Z: b[5]}, [2]float64{b[6], b[7]}
}

// pin returns the unit direction of kingpin i in the static position, foot its lower end
// from the reference point in the pose, and axis its direction there.
func (r *beamRater) pin(i int) dvec {
	a := &r.st.u.wheels[i].axis
	return r.point(a.upper).less(r.point(a.lower)).unit()
}

func (r *beamRater) foot(i int) dvec { return r.turn(r.local(r.st.u.wheels[i].axis.lower)) }
func (r *beamRater) axis(i int) dvec { return r.turn(r.pin(i)) }

// swung returns a direction fixed in knuckle i as the pose has it.
func (r *beamRater) swung(i int, v dvec) dvec {
	pin := r.pin(i)
	now := v.turnedAbout(pin, r.pose.ends[i].h)
	now.d = r3.Add(now.d, r3.Scale(r.turns[i], r3.Cross(pin.v, now.v)))
	return r.turn(now)
}

// onKnuckle returns a point of knuckle i from the reference point in the pose.
func (r *beamRater) onKnuckle(i, point int) dvec {
	return r.foot(i).plus(r.swung(i, r.point(point).less(r.point(r.st.u.wheels[i].axis.lower))))
}

// swing returns the moment of a force at a point of knuckle i about its kingpin.
func (r *beamRater) swing(i int, force, at dvec) dual {
	return r.axis(i).dot(at.less(r.foot(i)).cross(force))
}

// rod returns constraint i as a rod, which is nil of a wheel's height, and its vector from
// inner to outer ball; outer is where the latter stands from the reference point.
func (r *beamRater) rod(i int) (spec *rodSpec, outer, rod dvec) {
	u := r.st.u
	switch i {
	case dragRow:
		spec = &u.steer[dragLinkRod]
		outer = r.onKnuckle(r.b.pulls, spec.outer)
		return spec, outer, r.at.plus(outer).less(r.point(spec.inner)).less(r.inner)
	case beamTieRow:
		spec = u.tie()
		outer = r.onKnuckle(int(Left), spec.outer)
		return spec, outer, outer.less(r.onKnuckle(int(Right), spec.inner))
	}
	if i > beamTieRow {
		return nil, dvec{}, dvec{}
	}
	spec = &u.rods[i]
	outer = r.turn(r.local(spec.outer))
	return spec, outer, r.at.plus(outer).less(r.point(spec.inner))
}

// residual returns the rate of constraint i with the pose as it is.
func (r *beamRater) residual(i int) float64 {
	if spec, _, rod := r.rod(i); spec != nil {
		return rod.norm().d - r.point(spec.outer).less(r.point(spec.inner)).norm().d
	}
	centre := r.st.u.wheels[i-springRow].centre
	return r.at.d.Z + r.onKnuckle(i-springRow, centre).d.Z - r.t.of(centre).Z
}

// constraint returns the wrench of constraint i.
func (r *beamRater) constraint(i int) (w axleWrench) {
	spec, outer, rod := r.rod(i)
	if spec == nil {
		s := i - springRow
		at := r.onKnuckle(s, r.st.u.wheels[s].centre)
		w.dwrench = dpull(fixed(up), at)
		w.swing[s] = r.swing(s, fixed(up), at)
		return w
	}
	force := rod.unit()
	switch i {
	case beamTieRow: // equal and opposite pulls: the beam feels none
		w.swing[Left] = r.swing(int(Left), force, outer)
		w.swing[Right] = r.swing(int(Right), force, outer.less(rod)).scaled(-1)
		return w
	case dragRow:
		w.swing[r.b.pulls] = r.swing(r.b.pulls, force, outer)
	}
	w.dwrench = dpull(force, outer)
	return w
}

// push returns the wrench of the spring of side s pulled apart by 1 N.
func (r *beamRater) push(s int) axleWrench {
	m := r.sides[s].spring
	at := r.turn(r.fromReference(m.home))
	return axleWrench{dwrench: dpull(r.at.plus(at).less(fixed(m.body)).unit(), at)}
}

// bearing returns what the load on wheel i does.
func (r *beamRater) bearing(i int, l *WheelLoad) (w axleWrench) {
	w.dwrench = r.acting(l, r.swung(i, r.spinning(i)))
	at := r.onKnuckle(i, r.st.u.wheels[i].centre)
	w.swing[i] = r.swing(i, w.force, at).plus(r.axis(i).dot(w.moment))
	w.moment = w.moment.plus(at.cross(w.force))
	return w
}

// differentiate sets the rates of the forces by the parameter taken, on side s.
func (r *beamRater) differentiate(in *LoadCase, s Side, out *Forces) {
	var b column
	add := func(w axleWrench, by float64) {
		for i, v := range w.rates() {
			b[i] += by * v
		}
	}
	for i := range r.b.ends {
		add(r.bearing(i, &in.Wheels[i]), 1)
		add(r.push(i), -r.forces[springRow+i])
	}
	for i := range springRow {
		add(r.constraint(i), -r.forces[i])
	}
	r.balance.solveTransposed(&b, &b)
	out.TieRod, out.DragLink, out.Spring = b[beamTieRow], b[dragRow], 0-b[springRow+int(s)]
	if d := r.sides[s].stud; d != nil {
		_, _, rod := r.rod(beamTieRow)
		out.StudBending = r.bending(s, rod.unit().times(dual{r.forces[beamTieRow], out.TieRod}), r.swung(int(s), r.stud(int(s), d.axis)))
	}
}

// stud returns the axis of the stud of knuckle i in the static position.
func (r *beamRater) stud(i int, axis Vec) dvec {
	pin, h := r.pin(i), r.st.q[6+i]
	before := fixed(about(pin.v, axis, -h))
	now := r.standing(before).turnedAbout(pin, h)
	now.d = r3.Add(now.d, r3.Scale(2*r.t.pins[i]/(1+h*h), r3.Cross(pin.v, now.v)))
	return now
}
