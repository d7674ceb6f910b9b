package scene

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/number"
	"toewright/internal/plot"
	"toewright/solver"
)

// Sizes of the arrows of a load case, in CSS pixels.
const (
	longestForce = 72.0 // of the greatest force on a wheel; the others by theirs
	forceHead    = 12.0
	leastRod     = 30.0 // on the paper, of a rod whose force is drawn
)

// drawLoads draws the load case chosen on the car as it stands: the force on each wheel,
// and on each tie rod two heads, which point away from each other where it is pulled
// apart and at each other where it is pushed together, with the word.
func (s *Stage) drawLoads() {
	i, doc := s.desk.View.Load-1, s.desk.Session.Document()
	if i < 0 || i >= len(doc.Loads) {
		return
	}
	l, r := s.travel[solver.Left], s.travel[solver.Right]
	in, err := s.cars.Forces(s.car, i, solver.Attitude{Heave: (l + r) / 2, Roll: (r - l) / 2, Steer: s.desk.View.Steer}, s.ws, &s.forces)
	if err != nil {
		s.err = err
		return
	}
	greatest := math.Max(r3.Norm(in.Wheels[0].Force), r3.Norm(in.Wheels[1].Force))
	named := frontView
	if !s.shown(frontView) {
		named = planView
	}
	for v := range s.views {
		if !s.shown(v) || v == detailView {
			continue
		}
		for _, side := range solver.Sides {
			if s.views[v].showsSide(side) {
				s.drawForce(v, side, &in.Wheels[side], greatest)
				s.drawRodForce(v, side, v == named)
			}
		}
	}
}

// drawForce draws the force on a wheel from where it acts.
func (s *Stage) drawForce(v int, side solver.Side, load *solver.WheelLoad, greatest float64) {
	l := &s.views[v]
	at := s.placed.Wheel[side].WheelCentre
	if !load.AtCentre {
		e := s.placed.Spin[side]
		at = r3.Add(at, r3.Scale(s.car.Axle.TyreRadius(), r3.Unit(r3.Sub(r3.Scale(e.Z, e), solver.Vec{Z: 1}))))
	}
	from := l.paper(plot.Vec(at))
	to := l.paper(plot.Vec(r3.Add(at, r3.Scale(longestForce/l.p.Scale/greatest, load.Force))))
	if d := to.Sub(from); d.Length() > forceHead {
		s.out.draw(nodes.views[v].load, func(p plot.Path) plot.Path {
			return plot.AppendHead(p.Polyline(from, to), to, from.Sub(to).Unit().Times(forceHead))
		})
	}
}

// drawRodForce draws the force in the tie rod of a side, and says it where named.
func (s *Stage) drawRodForce(v int, side solver.Side, named bool) {
	l, force := &s.views[v], s.forces[side].TieRod
	if math.Abs(force) < 0.05 {
		return
	}
	for i := range l.bars {
		b := &l.bars[i]
		if b.layer != rodLayer || b.from != l.arm[side] && b.to != l.arm[side] || !l.shows(b.from) || !l.shows(b.to) {
			continue
		}
		a, c := l.on(b.from), l.on(b.to)
		along := c.Sub(a)
		if along.Length() < leastRod {
			return
		}
		head, word := along.Unit().Times(forceHead), "pushed "
		first, second := a.Add(along.Times(0.38)), c.Sub(along.Times(0.38)) // tips
		if force > 0 {
			word = "pulled "
			first, second, head = a.Add(along.Times(0.2)), c.Sub(along.Times(0.2)), head.Times(-1)
		}
		s.out.draw(nodes.views[v].load, func(p plot.Path) plot.Path {
			return plot.AppendHead(plot.AppendHead(p, first, head.Times(-1)), second, head)
		})
		if named {
			text := word + number.Force.Text(s.numbers.Style, math.Abs(force))
			s.out.write(nodes.views[v].loads[side], a.Add(along.Times(0.5)).Sub(plot.Point{Y: 0.8 * figureSize}), text)
		}
		return
	}
}
