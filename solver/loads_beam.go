package solver

import "gonum.org/v1/gonum/spatial/r3"

// springRow is the first of the rows of a solid axle's system that carry the forces of its
// springs, in place of the wheels' heights.
const springRow = heightRow

// beam sets out to the forces of a solid axle: those in its links, rods and springs
// that do the work of the loads in every movement of beam and kingpins.
func (k *Statics) beam(ws *Workspace, in *LoadCase, out *[2]Forces) error {
	x := k.axle
	if in.Wheels[Left].idle() && in.Wheels[Right].idle() {
		if k.giving != nil {
			k.giving.start(&out[Left])
			k.giving.start(&out[Right])
		}
		return nil
	}
	if err := x.originOfBeam(ws, in.Attitude); err != nil {
		return err
	}
	ws.beam = beamPath{b: x.beam, gear: newGearPath(x.drag, in.Steer, 0), from: [2]float64{in.travel(Left), in.travel(Right)}}
	t := &ws.tracer
	ws.beam.linearise(&ws.origin, 0, &t.f, &t.jac, &t.rate)
	at := x.beam.poseOf(&ws.origin)
	var toes [2]column // of the wheels by the lengths of links and rods
	if k.giving != nil && !x.beam.toeByLengths(t, &at, &toes) {
		return unheld(Left, in.travel(Left))
	}
	work := column{}
	for _, s := range Sides {
		m := k.sides[s].spring
		if m == nil {
			return &SpringError{s}
		}
		arm := at.r.turn(m.local)
		at.row(pull(r3.Unit(r3.Sub(x.beam.at(&at, arm), m.body)), arm), &t.jac[springRow+int(s)])
		x.beam.addWork(&at, s, &in.Wheels[s], x.tyreRadius, &work)
	}
	if !t.lu.factor(&t.jac, beamUnknowns) || !t.lu.sound() {
		return unheld(Left, in.travel(Left))
	}
	t.lu.solveTransposed(&work, &work)
	t.f = work
	tie := r3.Unit(r3.Sub(at.ends[Left].arm, at.ends[Right].arm))
	for _, s := range Sides {
		f := &out[s]
		f.TieRod, f.DragLink, f.Spring = work[beamTieRow], work[dragRow], 0-work[springRow+int(s)]
		if d := k.sides[s].stud; d != nil {
			f.StudBending = d.bending(r3.Scale(f.TieRod, tie), x.beam.knuckleDirection(&at, int(s), d.axis))
		}
	}
	if k.giving != nil {
		k.giveOfBeam(in, &at, &ws.beam, &t.f, &toes, out)
	}
	return nil
}

// toeByLengths sets the toe of each wheel by the lengths of links and rods, the wheels
// held at their heights, where t has the axle's equations.
func (b *beam) toeByLengths(t *tracer, at *axlePose, toes *[2]column) bool {
	if !t.lu.factor(&t.jac, beamUnknowns) {
		return false
	}
	for i := range toes {
		toes[i], _ = b.toeRow(at, i)
		t.lu.solveTransposed(&toes[i], &toes[i])
	}
	return true
}

// giveOfBeam is [Statics.giveOfCorner] of a solid axle.
func (k *Statics) giveOfBeam(in *LoadCase, at *axlePose, path *beamPath, forces *column, toes *[2]column, out *[2]Forces) {
	g, b := k.giving, k.axle.beam
	drag := r3.Unit(r3.Sub(r3.Sub(b.at(at, b.dragOuter(at)), b.drag.a), path.gear.still))
	var gear [2]gearGive
	for s := range out {
		g.start(&out[s])
		for i := range b.links {
			out[s].Give[g.rods[i]] = toes[s][i] * forces[i] * g.soft[g.rods[i]]
		}
		out[s].Give[g.tie] = toes[s][beamTieRow] * forces[beamTieRow] * g.soft[g.tie]
		out[s].Give[g.tie+1] = toes[s][dragRow] * forces[dragRow] * g.soft[g.tie+1]
		gear[Left].force, gear[Left].toes[s] = alongGear(k.axle.drag, in.Steer, drag, forces[dragRow], toes[s][dragRow])
	}
	g.giveOfGear(&gear, out)
}

// addWork adds the rate of work of a wheel's load by the unknowns of the axle.
func (b *beam) addWork(p *axlePose, s Side, l *WheelLoad, radius float64, work *column) {
	e := &p.ends[s]
	w := l.wrench(b.spinOf(p, int(s)), radius)
	moment := r3.Add(w.moment, r3.Cross(e.wheel, w.force)) // about the beam's reference point
	var row column
	p.row(wrench{w.force, moment}, &row)
	row[6+int(s)] = e.swing(w.force, e.wheel) + 2/(1+e.h*e.h)*r3.Dot(e.dir, w.moment)
	for i := range row {
		work[i] += row[i]
	}
}
