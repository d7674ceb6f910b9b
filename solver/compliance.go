package solver

import (
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"
)

// Members beside those that a kind of suspension is located by.
const (
	tieRodMember   = "tieRod"
	dragLinkMember = "dragLink"
	gearMember     = "gear"
)

// Members returns the names of what gives under a load: the pivots of arms and a strut's
// top mount by their points, links and rods that carry force along themselves alone by
// their own, the tie rod, a solid axle's drag link, and the steering gear.
func (d *Design) Members() (names []string) {
	u := d.Kind.layout.units(d)[0]
	for i := range u.rods {
		if name := u.member(i); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	if u.strut != nil {
		names = append(names, u.points[u.strut.top].Name)
	}
	names = append(names, tieRodMember)
	if u.beam {
		names = append(names, dragLinkMember)
	}
	if d.Gear.Kind != NoGear {
		names = append(names, gearMember)
	}
	return names
}

// member returns the name of what gives at the inner end of rod i: of an arm's leg the
// pivot, else the rod.
func (u *unit) member(i int) string {
	name := u.points[u.rods[i].inner].Name
	if u.hingeOf(i) != nil {
		return name
	}
	if u.beam {
		return u.rods[i].name
	}
	return strings.TrimSuffix(name, ".inner")
}

// hingeOf returns the first arm on the hinge of rod i, nil where it is a link of its own.
func (u *unit) hingeOf(i int) *armSpec {
	inner := u.rods[i].inner
	for k := range u.arms {
		if a := &u.arms[k]; a.front == inner || a.rear == inner {
			return a
		}
	}
	return nil
}

// givingStatics are the members of an axle, of which all stiffnesses are stated.
type givingStatics struct {
	soft  []float64 // mm/N of each, in the order of [Design.Members]
	rods  [4]int    // the member at the inner end of each rod
	mount int       // that of a strut
	tie   int       // and of the tie rod; the drag link and the gear follow
	gear  float64   // movement of the steering, mm or rad, by its force or moment; 0 without a gear
}

// giving returns the members by their stiffness, N/mm; nil where one is not stated.
func (x *Axle) giving(stiffness map[string]float64) *givingStatics {
	u, names := x.static[0].u, x.Design().Members()
	g := &givingStatics{soft: make([]float64, len(names)), tie: slices.Index(names, tieRodMember)}
	for i, name := range names {
		k := stiffness[name]
		if !(k > 0) {
			return nil
		}
		g.soft[i] = 1 / k
	}
	for i := range u.rods {
		g.rods[i] = slices.Index(names, u.member(i))
	}
	g.mount = g.tie - 1
	if x.gear.Kind == NoGear {
		return g
	}
	g.gear = g.soft[len(names)-1]
	if x.gear.Kind == CentreLink { // at the pitman ball
		arm := square(r3.Unit(x.gear.PitmanAxis), r3.Sub(x.gear.Points[pitmanBall], x.gear.Points[pitmanPivot]))
		g.gear /= r3.Norm2(arm)
	}
	return g
}

// gearGive is what the rod of one side has to do with the gear.
type gearGive struct {
	force float64    // on the steering, by its movement, N or N mm
	toes  [2]float64 // toe of each wheel by that movement, rad
}

// giveOfGear adds to the toe of both wheels what the gear's give makes of the forces of
// the rods that it moves.
func (g *givingStatics) giveOfGear(rods *[2]gearGive, out *[2]Forces) {
	if g.gear == 0 {
		return
	}
	moved := g.gear * (rods[Left].force + rods[Right].force)
	for s := range out {
		give := out[s].Give
		give[len(give)-1] = moved * (rods[Left].toes[s] + rods[Right].toes[s])
	}
}

// start makes room for the members' shares.
func (g *givingStatics) start(out *Forces) {
	for range g.soft {
		out.Give = append(out.Give, 0)
	}
}

// giveOfCorner sets what the members of side s but the gear do to its toe, where its
// forces are those of the workspace, and returns what its tie rod has to do with the gear.
// It returns false at a lock.
//
// By Castigliano's theorem that is the member's force, times that which a unit moment
// turning the wheel in toe makes with the wheel centre held at its height, by its
// stiffness: the latter force is the toe by the member's length, see [corner.toeGradient].
func (k *Statics) giveOfCorner(ws *Workspace, in *LoadCase, s Side, out *Forces) (gear gearGive, ok bool) {
	x, g, e := k.axle, k.giving, &ws.corner.eq
	st, forces := x.static[s], ws.tracer.f
	spin := e.at.r.turn(st.corner.spin)
	loads, ok := ws.corner.loads(&ws.tracer, r3.Cross(spin, toeSlope(spin)))
	if !ok {
		return gear, false
	}
	var toe column // by the length of each constraint; the spring makes none
	copy(toe[:], loads[:])
	g.start(out)
	for i := range st.corner.n {
		m := g.rods[i]
		a := st.u.hingeOf(i)
		if a == nil {
			out.Give[m] = toe[i] * forces[i] * g.soft[m]
		} else if i == a.first || i == a.second {
			front := i == a.first
			out.Give[m] = g.soft[m] * r3.Dot(k.onPivot(s, a, e, &forces, front), k.onPivot(s, a, e, &toe, front))
		}
	}
	if c := st.corner; c.strut != nil { // square to its axis, as both constraints are
		a, b := e.w[c.n].force, e.w[c.n+1].force
		force := axpy(forces[c.n], a, r3.Scale(forces[c.n+1], b))
		out.Give[g.mount] = g.soft[g.mount] * (toe[c.n]*r3.Dot(a, force) + toe[c.n+1]*r3.Dot(b, force))
	}
	out.Give[g.tie] = toe[tieRow] * forces[tieRow] * g.soft[g.tie]
	gear.force, gear.toes[s] = alongGear(x.balls[s], in.Steer, e.w[tieRow].force, forces[tieRow], toe[tieRow])
	return gear, true
}

// alongGear returns the force of a rod on the steering by its movement, and what that
// movement does by the rod, of which toe is by its length.
func alongGear(ball innerBall, steer float64, rod Vec, tension, toe float64) (force, by float64) {
	if ball == nil {
		return 0, 0
	}
	_, moving := ball.shift(steer)
	along := r3.Dot(rod, moving)
	return tension * along, toe * along
}

// onPivot returns the force of an arm, its spring's with it, on its front or rear pivot.
// Bushings share what is along the hinge by their stiffness.
func (k *Statics) onPivot(s Side, a *armSpec, e *cornerEquations, forces *column, front bool) Vec {
	st, g := k.axle.static[s], k.giving
	rear := st.pts[a.rear]
	hinge := r3.Sub(st.pts[a.front], rear)
	var force, moment Vec // about the rear pivot
	var soft [2]float64
	for i := range st.corner.n {
		switch inner := st.u.rods[i].inner; inner {
		case a.front:
			pull := r3.Scale(forces[i], e.w[i].force)
			force, moment = r3.Add(force, pull), r3.Add(moment, r3.Cross(hinge, pull))
			soft[0] = g.soft[g.rods[i]]
		case a.rear:
			force = axpy(forces[i], e.w[i].force, force)
			soft[1] = g.soft[g.rods[i]]
		}
	}
	if m := k.sides[s].spring; m != nil && m.arm != nil && m.arm.front == a.front && forces[springColumn] != 0 {
		f, ball := m.arm.inPose(st, &e.at)
		place := f.from(m.local)
		push, back := r3.Scale(forces[springColumn], r3.Unit(r3.Sub(place, m.body))), m.onArm(st, &e.at).force
		back = r3.Scale(forces[springColumn], back)
		force = r3.Add(force, r3.Sub(push, back))
		moment = r3.Add(moment, r3.Cross(r3.Sub(place, rear), push))
		moment = r3.Sub(moment, r3.Cross(r3.Sub(r3.Add(e.at.w, ball), rear), back))
	}
	l := r3.Norm(hinge)
	hinge = r3.Scale(1/l, hinge)
	along := r3.Dot(hinge, force) / (soft[0] + soft[1])
	onFront := axpy(along*soft[1], hinge, r3.Scale(1/l, r3.Cross(moment, hinge)))
	if front {
		return onFront
	}
	return r3.Sub(force, onFront)
}
