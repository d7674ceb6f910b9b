package solver

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// ToeGivenWay solves the linkage again with every member longer, or its pivot, mount or
// inner ball elsewhere, by what it gives under a load case, and returns by how much the
// toes have changed.
func ToeGivenWay(t *testing.T, k *Statics, in *LoadCase) [2]float64 {
	t.Helper()
	var f [2]Forces
	if err := k.Forces(NewWorkspace(), in, &f); err != nil {
		t.Fatal(err)
	}
	if k.axle.beam != nil {
		return beamGivenWay(t, k, in, &f)
	}
	moved := 0.0 // of the gear
	for _, s := range Sides {
		if ball := k.axle.balls[s]; ball != nil {
			ws := NewWorkspace()
			if err := k.constrain(ws, in, s); err != nil {
				t.Fatal(err)
			}
			_, by := ball.shift(in.Steer)
			moved += k.giving.gear * f[s].TieRod * r3.Dot(by, ws.corner.eq.w[tieRow].force)
		}
	}
	var out [2]float64
	for _, s := range Sides {
		out[s] = cornerGivenWay(t, k, in, s, moved)
	}
	return out
}

func cornerGivenWay(t *testing.T, k *Statics, in *LoadCase, s Side, moved float64) float64 {
	t.Helper()
	ws, g, load := NewWorkspace(), k.giving, in.Wheels[s].mirrored(s)
	var f Forces
	if load.idle() {
		if err := k.constrain(ws, in, s); err != nil {
			t.Fatal(err)
		}
		ws.tracer.f = column{}
	} else if err := k.balance(ws, in, s, &load, &f); err != nil {
		t.Fatal(err)
	}
	st, e, forces := k.axle.static[s], &ws.corner.eq, ws.tracer.f
	soft := *st.corner
	for i := range soft.n {
		force := r3.Scale(forces[i], e.w[i].force)
		if a := st.u.hingeOf(i); a != nil {
			force = k.onPivot(s, a, e, &forces, st.u.rods[i].inner == a.front)
		}
		soft.rods[i].a = axpy(g.soft[g.rods[i]], force, soft.rods[i].a)
	}
	if soft.strut != nil {
		strut := *soft.strut
		force := axpy(forces[soft.n], e.w[soft.n].force, r3.Scale(forces[soft.n+1], e.w[soft.n+1].force))
		strut.top = axpy(g.soft[g.mount], force, strut.top)
		soft.strut = &strut
	}
	soft.tie.l += f.TieRod * g.soft[g.tie]
	soft.tie.inv = 1 / soft.tie.l
	if ball := k.axle.balls[s]; ball != nil {
		_, by := ball.shift(in.Steer)
		soft.tie.a = axpy(moved, by, soft.tie.a)
	}
	toe := func(c *corner) float64 {
		p := &cornerPath{c: c, gear: ws.corner.gear, from: in.travel(s)}
		q := againBy(t, p, ws.origin)
		at := c.poseOf(&q, in.travel(s))
		a := at.r.turn(c.spin)
		return float64(toeOf(a))
	}
	return toe(&soft) - toe(st.corner)
}

func beamGivenWay(t *testing.T, k *Statics, in *LoadCase, f *[2]Forces) (out [2]float64) {
	t.Helper()
	ws, g := NewWorkspace(), k.giving
	var same [2]Forces
	if err := k.beam(ws, in, &same); err != nil {
		t.Fatal(err)
	}
	soft := *k.axle.beam
	longer := func(r *rod, i, m int) {
		r.l += ws.tracer.f[i] * g.soft[m]
		r.inv = 1 / r.l
	}
	for i := range soft.links {
		longer(&soft.links[i], i, g.rods[i])
	}
	longer(&soft.drag, dragRow, g.tie+1)
	soft.tie += f[Left].TieRod * g.soft[g.tie]
	if k.axle.drag != nil {
		at := k.axle.beam.poseOf(&ws.origin)
		d := r3.Unit(r3.Sub(r3.Sub(k.axle.beam.at(&at, k.axle.beam.dragOuter(&at)), soft.drag.a), ws.beam.gear.still))
		_, by := k.axle.drag.shift(in.Steer)
		soft.drag.a = axpy(g.gear*f[Left].DragLink*r3.Dot(by, d), by, soft.drag.a)
	}
	for i, b := range []*beam{k.axle.beam, &soft} {
		p := ws.beam
		p.b = b
		q := againBy(t, &p, ws.origin)
		at := b.poseOf(&q)
		for s := range out {
			out[s] += float64(2*i-1) * float64(toeOf(Side(s).Mirrored(b.spinOf(&at, s))))
		}
	}
	return out
}

// againBy solves a system where it stands.
func againBy(t *testing.T, p system, q state) state {
	t.Helper()
	for range 8 {
		var f, rate column
		var jac matrix
		var lu factors
		p.linearise(&q, 0, &f, &jac, &rate)
		if !lu.factor(&jac, p.size()) {
			t.Fatal("a lock")
		}
		lu.solve(&f, &f)
		for i := range p.size() {
			q[i] -= f[i]
		}
	}
	return q
}
