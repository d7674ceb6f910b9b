package solver

import "gonum.org/v1/gonum/spatial/r3"

// springColumn is the place of the spring among a knuckle's six forces, behind those
// of its constraints.
const (
	springColumn = cornerUnknowns
	freedoms     = 6
)

// corner sets out to the forces of one side: those in the five constraints and the
// spring that balance the load on the knuckle, six equations. It sets gear to what the
// tie rod has to do with it where members give.
func (k *Statics) corner(ws *Workspace, in *LoadCase, s Side, out *Forces, gear *gearGive) error {
	load := in.Wheels[s].mirrored(s)
	face, stud := k.sides[s].face, k.sides[s].stud
	var pull Vec // of the rod on its ball, by the static knuckle
	switch {
	case !load.idle():
		if err := k.balance(ws, in, s, &load, out); err != nil {
			return err
		}
		e := &ws.corner.eq
		pull = e.at.r.back(r3.Scale(-out.TieRod, e.w[tieRow].force))
	case k.giving != nil: // it may feel the other's rod by the gear
		if err := k.constrain(ws, in, s); err != nil {
			return err
		}
		ws.tracer.f = column{}
	}
	if k.giving != nil {
		var ok bool
		if *gear, ok = k.giveOfCorner(ws, in, s, out); !ok {
			return unheld(s, in.travel(s))
		}
	}
	if face != nil {
		face.set(s, pull, k.axle.corners[s].tie.b, out)
	}
	if stud != nil {
		out.StudBending = stud.bending(pull, stud.axis)
	}
	return nil
}

// balance sets the forces in rod and spring, and leaves the pose in the workspace.
func (k *Statics) balance(ws *Workspace, in *LoadCase, s Side, load *WheelLoad, out *Forces) error {
	if err := k.constrain(ws, in, s); err != nil {
		return err
	}
	e := &ws.corner.eq
	spring, ok := k.spring(s, &e.at)
	if !ok {
		return &SpringError{s}
	}
	m, f := &ws.tracer.jac, &ws.tracer.f
	for i := range e.w {
		m.setColumn(i, &e.w[i])
	}
	m.setColumn(springColumn, &wrench{r3.Scale(-1, spring.force), r3.Scale(-1, spring.moment)})
	w := load.wrench(e.at.r.turn(ws.corner.c.spin), k.axle.tyreRadius)
	*f = column{w.force.X, w.force.Y, w.force.Z, w.moment.X, w.moment.Y, w.moment.Z}
	lu := &ws.tracer.lu
	if !lu.factor(m, freedoms) || !lu.sound() {
		return unheld(s, in.travel(s))
	}
	lu.solve(f, f)
	out.TieRod, out.Spring = f[tieRow], f[springColumn]
	return nil
}

// constrain moves side s to where the load case has it, and leaves its constraints in
// the workspace.
func (k *Statics) constrain(ws *Workspace, in *LoadCase, s Side) error {
	x := k.axle
	if err := x.originOfCorner(ws, in.Attitude, s); err != nil {
		return err
	}
	ws.corner = cornerPath{c: x.corners[s], gear: newGearPath(x.balls[s], in.Steer, 0), from: in.travel(s)}
	ws.corner.constrain(&ws.origin, 0, &ws.corner.eq)
	return nil
}

// setColumn sets column j to a wrench: force over moment.
func (m *matrix) setColumn(j int, w *wrench) {
	m[0][j], m[1][j], m[2][j] = w.force.X, w.force.Y, w.force.Z
	m[3][j], m[4][j], m[5][j] = w.moment.X, w.moment.Y, w.moment.Z
}

// spring returns the wrench on the knuckle of a spring of side s that is pushed
// together by 1 N. It returns false where there is none.
func (k *Statics) spring(s Side, p *pose) (wrench, bool) {
	st := k.axle.static[s]
	switch m := k.sides[s].spring; {
	case m != nil && m.arm != nil:
		return m.onArm(st, p), true
	case m != nil:
		at := p.r.turn(m.local)
		return pull(r3.Unit(r3.Sub(r3.Add(p.w, at), m.body)), at), true
	case st.corner.strut != nil:
		on, dir := st.corner.strut.pierce(p)
		return pull(r3.Scale(-1, dir), on), true
	}
	return wrench{}, false
}

// onArm returns what a spring on an arm does to the knuckle: a force at the arm's ball
// along its circle that has the spring's moment about the pivots.
func (m *mount) onArm(st *staticUnit, p *pose) wrench {
	f, ball := m.arm.inPose(st, p)
	at := f.from(m.local)
	moment := r3.Dot(f.axes[0], r3.Cross(r3.Sub(at, f.at), r3.Unit(r3.Sub(at, m.body))))
	radius := r3.Dot(f.axes[1], r3.Sub(r3.Add(p.w, ball), f.at))
	return pull(r3.Scale(moment/radius, f.axes[2]), ball)
}
