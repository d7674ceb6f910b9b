package engine

import (
	"slices"

	"toewright/solver"
)

func mirroredAxis(v [3]float64, s solver.Side) solver.Vec {
	if s == solver.Right {
		v[1] = -v[1]
	}
	return solver.Vec{X: v[0], Y: v[1], Z: v[2]}
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

// part returns the rod, or a ball as a rod without length: see [study.ClearParts].
func (m *limitMeter) part(kind *solver.Kind, at *solver.Placed, s solver.Side) solver.Segment {
	outer := at.Side[s][roleIndex(kind, solver.TieRodOuterRole)]
	switch m.l.Of {
	case "inner-ball":
		ball := gearBall(kind, at, s)
		return solver.Segment{A: ball, B: ball}
	case "tie-rod":
		return solver.Segment{A: innerBall(kind, at, s), B: outer}
	case "drag-link":
		return solver.Segment{A: gearBall(kind, at, s), B: commonPoint(kind, at, solver.DragOuterRole)}
	case "drag-link-outer-ball":
		ball := commonPoint(kind, at, solver.DragOuterRole)
		return solver.Segment{A: ball, B: ball}
	}
	return solver.Segment{A: outer, B: outer}
}

// gearBall returns the ball on the gear: the tie rod's, or of an axle the drag link's.
func gearBall(kind *solver.Kind, at *solver.Placed, s solver.Side) solver.Vec {
	if kind.CommonPoints != nil {
		return commonPoint(kind, at, solver.DragInnerRole)
	}
	return innerBall(kind, at, s)
}

// commonPoint returns the point of neither side with a role that the kind has.
func commonPoint(kind *solver.Kind, at *solver.Placed, role solver.Role) solver.Vec {
	return at.Common[slices.IndexFunc(kind.CommonPoints, func(h solver.Hardpoint) bool { return h.Role == role })]
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
