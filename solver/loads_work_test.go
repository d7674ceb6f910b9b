package solver

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// ForcesByWork returns the forces of a load case by virtual work: by the derivatives of
// the pose, the force in a rod is the rate of the loads' work by its length, springs
// held; that in a spring by its own length, rods held.
func ForcesByWork(t *testing.T, k *Statics, in *LoadCase) [2]Forces {
	t.Helper()
	if k.axle.beam != nil {
		return workOfBeam(t, k, in)
	}
	return workOfCorners(t, k, in)
}

// tipOf returns where a wheel's load acts, from its centre.
func tipOf(l *WheelLoad, e Vec, radius float64) Vec {
	if l.AtCentre {
		return Vec{}
	}
	return r3.Scale(-radius, r3.Unit(r3.Sub(up, r3.Scale(r3.Dot(up, e), e))))
}

// workOfCorners returns the forces of both sides by work.
func workOfCorners(t *testing.T, k *Statics, in *LoadCase) (out [2]Forces) {
	t.Helper()
	x, ws := k.axle, NewWorkspace()
	for _, s := range Sides {
		if err := x.originOfCorner(ws, in.Attitude, s); err != nil {
			t.Fatal(err)
		}
		p := cornerPath{c: x.corners[s], gear: newGearPath(x.balls[s], in.Steer, 0), from: in.travel(s), rate: 1}
		var tr tracer
		var lift, lengthen movement
		by, ok := p.velocities(&tr, &ws.origin, &lift)
		if !ok {
			t.Fatal("a lock")
		}
		at := p.c.poseOf(&ws.origin, in.travel(s))
		lengthen.omega, lengthen.v = by.answer(&[cornerUnknowns]float64{tieRow: -1}) // the rod by 1 mm longer
		load := in.Wheels[s].mirrored(s)
		tip := tipOf(&load, at.r.turn(p.c.spin), x.tyreRadius)
		work := func(m *movement) float64 {
			return r3.Dot(load.Force, m.velocity(tip)) + r3.Dot(load.Moment, m.omega)
		}
		stretch := func(m *movement) float64 { return springRate(k.sides[s].spring, x.static[s], &at, m) }
		// The spring does what the load does; both together what the rod's tension does.
		out[s].Spring = -work(&lift) / stretch(&lift)
		out[s].TieRod = work(&lengthen) + out[s].Spring*stretch(&lengthen)
	}
	return out
}

// springRate returns the rate of a spring's length: by its mount on the knuckle, along a
// strut's own axis, or by its mount on an arm, which turns about the pivots as the ball
// does.
func springRate(m *mount, st *staticUnit, p *pose, v *movement) float64 {
	switch {
	case m == nil:
		lower := p.r.turn(st.corner.strut.on)
		return r3.Dot(r3.Unit(r3.Sub(r3.Add(p.w, lower), st.corner.strut.top)), v.velocity(lower))
	case m.arm == nil:
		at := p.r.turn(m.local)
		return r3.Dot(r3.Unit(r3.Sub(r3.Add(p.w, at), m.body)), v.velocity(at))
	}
	f, ball := m.arm.inPose(st, p)
	at := f.from(m.local)
	axis := r3.Unit(r3.Sub(st.pts[m.arm.front], st.pts[m.arm.rear]))
	arm := r3.Sub(r3.Add(p.w, ball), st.pts[m.arm.rear])
	swept := r3.Cross(axis, arm) // of the ball by radian
	turn := r3.Dot(v.velocity(ball), swept) / r3.Norm2(swept)
	mountRate := r3.Scale(turn, r3.Cross(axis, r3.Sub(at, st.pts[m.arm.rear])))
	return r3.Dot(r3.Unit(r3.Sub(at, m.body)), mountRate)
}

// workOfBeam returns the forces of a solid axle by work.
func workOfBeam(t *testing.T, k *Statics, in *LoadCase) (out [2]Forces) {
	t.Helper()
	x, ws := k.axle, NewWorkspace()
	if err := x.originOfBeam(ws, in.Attitude); err != nil {
		t.Fatal(err)
	}
	p := beamPath{b: x.beam, gear: newGearPath(x.drag, in.Steer, 0), from: [2]float64{in.travel(Left), in.travel(Right)}}
	var f, rate column
	var jac matrix
	var lu factors
	p.linearise(&ws.origin, 0, &f, &jac, &rate)
	if !lu.factor(&jac, beamUnknowns) {
		t.Fatal("a lock")
	}
	at := x.beam.poseOf(&ws.origin)
	moves := func(row int) column { // of the axle when one length grows by 1 mm, or a wheel rises by it
		var b column
		b[row] = 1
		lu.solve(&b, &b)
		return b
	}
	work := func(q *column) (sum float64) {
		omega, v := spin(at.g, Vec{X: q[0], Y: q[1], Z: q[2]}), Vec{X: q[3], Y: q[4], Z: q[5]}
		for s := range Sides {
			e, l := &at.ends[s], &in.Wheels[s]
			turn := r3.Scale(2*q[6+s]/(1+e.h*e.h), e.dir)
			tip := r3.Add(e.wheel, tipOf(l, x.beam.spinOf(&at, s), x.tyreRadius))
			rate := r3.Add(v, r3.Add(r3.Cross(omega, tip), r3.Cross(turn, r3.Sub(tip, e.foot))))
			sum += r3.Dot(l.Force, rate) + r3.Dot(l.Moment, r3.Add(omega, turn))
		}
		return sum
	}
	stretch := func(q *column, s Side) float64 {
		m := k.sides[s].spring
		arm := at.r.turn(m.local)
		v := r3.Add(Vec{X: q[3], Y: q[4], Z: q[5]}, r3.Cross(spin(at.g, Vec{X: q[0], Y: q[1], Z: q[2]}), arm))
		return r3.Dot(r3.Unit(r3.Sub(x.beam.at(&at, arm), m.body)), v)
	}
	// Both springs do the work of lifting either wheel: two equations.
	l, r := moves(6), moves(7)
	a, b, c, d := stretch(&l, Left), stretch(&l, Right), stretch(&r, Left), stretch(&r, Right)
	u, v := -work(&l), -work(&r)
	det := a*d - b*c
	springs := [2]float64{(u*d - b*v) / det, (a*v - u*c) / det}
	tension := func(row int) float64 {
		q := moves(row)
		return work(&q) + springs[0]*stretch(&q, Left) + springs[1]*stretch(&q, Right)
	}
	for s := range out {
		out[s] = Forces{TieRod: tension(beamTieRow), DragLink: tension(dragRow), Spring: springs[s]}
	}
	return out
}
