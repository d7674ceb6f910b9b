package engine

import (
	"math"
	"slices"

	"toewright/optimize"
	"toewright/solver"
)

// jointTravels returns the travels at which joints and clearances are looked at:
// the ends of the window, its quarters and the static height.
func (m *limitMeter) jointTravels() []float64 {
	mm := m.grid.mm
	lo, hi := mm[0], mm[len(mm)-1]
	var out []float64
	for _, t := range [...]float64{lo, lo / 2, 0, hi / 2, hi} {
		if len(out) == 0 || t > out[len(out)-1] {
			out = append(out, t)
		}
	}
	return out
}

func mirroredAxis(v [3]float64, s solver.Side) solver.Vec {
	if s == solver.Right {
		v[1] = -v[1]
	}
	return solver.Vec{X: v[0], Y: v[1], Z: v[2]}
}

// jointAngle returns the largest misalignment along the travel, degrees.
func (m *limitMeter) jointAngle(car *solver.Axle, ws *solver.Workspace, of func(*solver.JointAngles) solver.Angle) extremum {
	var curves [2]solver.Curve
	in := solver.SweepInput{Travels: m.jointTravels(), Joints: m.joints(car)}
	found := newExtremum(true)
	for _, steer := range m.steers {
		in.From.Steer = steer
		if err := car.Sweep(ws, &in, &curves); err != nil {
			return unreached(err, optimize.LimitPlace{Steer: steer})
		}
		for _, s := range m.sides {
			c := &curves[s]
			if m.atLock() && !c.Reach.Whole() {
				return cutShort(c, in.Travels, optimize.LimitPlace{Side: s, Steer: steer})
			}
			for i := range c.Positions {
				p := &c.Positions[i]
				found.see(of(&p.Joints).Degrees(), optimize.LimitPlace{Side: s, Travel: p.Travel, Steer: steer})
			}
		}
	}
	return found
}

func (m *limitMeter) innerBall(car *solver.Axle, ws *solver.Workspace) extremum {
	return m.jointAngle(car, ws, func(j *solver.JointAngles) solver.Angle { return j.Inner })
}

func (m *limitMeter) outerBall(car *solver.Axle, ws *solver.Workspace) extremum {
	return m.jointAngle(car, ws, func(j *solver.JointAngles) solver.Angle { return j.Outer })
}

func (m *limitMeter) toeOut(car *solver.Axle, ws *solver.Workspace) float64 {
	return m.extreme(func(s solver.Side) float64 {
		if turn, ok := turnOf(car, ws, s); ok {
			return turn.ToeOut().Degrees()
		}
		return math.NaN()
	})
}

func (m *limitMeter) ackermann(car *solver.Axle, ws *solver.Workspace) float64 {
	return m.extreme(func(s solver.Side) float64 {
		if turn, ok := turnOf(car, ws, s); ok {
			return float64(ackermann(car, turn))
		}
		return math.NaN()
	})
}

func (m *limitMeter) steeringRatio(car *solver.Axle, ws *solver.Workspace) float64 {
	return float64(m.ratio(car, ws))
}

// circle is the turning circle at full lock, the larger of both hands.
func (m *limitMeter) circle(car *solver.Axle, ws *solver.Workspace) float64 {
	return m.worst(true, func(s solver.Side) float64 { return float64(m.turningCircle(car, ws, s)) })
}

// clearance is the least distance of the part from the plane, the rim or the link along
// the travel, the part's own radius taken off.
func (m *limitMeter) clearance(car *solver.Axle, ws *solver.Workspace) extremum {
	found := newExtremum(false)
	var at solver.Placed
	for _, steer := range m.steers {
		for _, t := range m.jointTravels() {
			if err := car.Place(ws, [2]float64{t, t}, steer, &at); err != nil {
				return unreached(err, optimize.LimitPlace{Travel: t, Steer: steer})
			}
			for _, s := range m.sides {
				found.see(m.gap(car.Design().Kind, &at, s), optimize.LimitPlace{Side: s, Travel: t, Steer: steer})
			}
		}
	}
	found.value = m.length(found.value) - m.l.Radius
	return found
}

// gap returns the distance of the part from what bounds it on a side, mm: of a link
// its surface.
func (m *limitMeter) gap(kind *solver.Kind, at *solver.Placed, s solver.Side) float64 {
	part := m.part(kind, at, s)
	mm := m.doc.Units.Millimetres
	if r := m.l.Rim; r != nil {
		return solver.Rim{Radius: mm(r.Radius), Offset: mm(r.Offset)}.Clearance(at.Wheel[s].WheelCentre, at.Spin[s], part)
	}
	if l := m.l.Link; l != nil {
		bar := solver.Segment{A: m.place(l.From, at, s), B: m.place(l.To, at, s)}
		return bar.Distance(part) - mm(l.Radius)
	}
	p := m.l.Plane
	point, normal := mirroredAxis(p.Point, s), mirroredAxis(p.Normal, s)
	point.X, point.Y, point.Z = mm(point.X), mm(point.Y), mm(point.Z)
	return solver.Plane{Point: point, Normal: normal}.Clearance(part)
}

// part returns the rod, or a ball as a rod without length.
func (m *limitMeter) part(kind *solver.Kind, at *solver.Placed, s solver.Side) solver.Segment {
	inner, outer := innerBall(kind, at, s), at.Side[s][roleIndex(kind, solver.TieRodOuterRole)]
	switch m.l.Of {
	case "inner-ball":
		return solver.Segment{A: inner, B: inner}
	case "tie-rod":
		return solver.Segment{A: inner, B: outer}
	}
	return solver.Segment{A: outer, B: outer}
}

// hardpoint returns the place of a hardpoint of the car among its side points and,
// after those, its common ones; -1 where it has none of that name.
func (m *limitMeter) hardpoint(name string) int {
	kind := m.design.Kind
	named := func(h solver.Hardpoint) bool { return h.Name == name }
	if i := slices.IndexFunc(kind.SidePoints, named); i >= 0 {
		return i
	}
	if i := slices.IndexFunc(kind.CommonPoints, named); i >= 0 {
		return len(kind.SidePoints) + i
	}
	return -1
}

// place returns where a hardpoint stands, that of the side where there are two.
func (m *limitMeter) place(name string, at *solver.Placed, s solver.Side) solver.Vec {
	i, sided := m.hardpoint(name), len(m.design.Kind.SidePoints)
	if i < sided {
		return at.Side[s][i]
	}
	return at.Common[i-sided]
}
