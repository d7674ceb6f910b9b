package study

import (
	"fmt"

	"toewright/solver"
)

// Design returns the axle as the solver takes it, in millimetres and radians. The
// error names the key of what is missing; whether the linkage can be assembled is
// for [solver.Design.Check].
func (d *Document) Design() (*solver.Design, error) {
	kind, err := solver.KindByName(d.Suspension.Type)
	if err != nil {
		return nil, err
	}
	design := &solver.Design{
		Kind:       kind,
		Gear:       d.gear(),
		Adjuster:   d.Suspension.Adjuster,
		DragSide:   d.Suspension.DragSide.Solver(),
		Wheelbase:  d.Units.Millimetres(d.Vehicle.Wheelbase),
		TyreRadius: d.Units.Millimetres(d.TyreRadius()),
	}
	for i, side := range sides {
		c := d.Suspension.Corner(side)
		if design.Points[i], err = d.vecs(kind.SidePoints, c.Points, string(side)); err != nil {
			return nil, err
		}
		design.Toe[i], design.Camber[i] = solver.Deg(c.Toe), solver.Deg(c.Camber)
		design.StudAxis[i] = direction(c.StudAxis, Vec3{})
	}
	design.Common, err = d.vecs(kind.CommonPoints, d.Suspension.Common, "suspension")
	return design, err
}

// vecs lists points in the solver's order and in mm.
func (d *Document) vecs(hardpoints []solver.Hardpoint, points Points, path string) ([]solver.Vec, error) {
	places, err := placesOf(hardpoints, points, path)
	if err != nil {
		return nil, fmt.Errorf("study: %w", err)
	}
	vecs := make([]solver.Vec, len(places))
	for i, v := range places {
		vecs[i] = d.vec(v)
	}
	return vecs, nil
}

// vec returns a point in mm.
func (d *Document) vec(v Vec3) solver.Vec {
	return solver.Vec{X: d.Units.Millimetres(v[0]), Y: d.Units.Millimetres(v[1]), Z: d.Units.Millimetres(v[2])}
}

// direction returns a vector whose length does not matter, or the default.
func direction(v *Vec3, byDefault Vec3) solver.Vec {
	if v == nil {
		v = &byDefault
	}
	return solver.Vec{X: v[0], Y: v[1], Z: v[2]}
}

// lateral is the axis of a rack that states none.
var lateral = Vec3{0, 1, 0}

// gear returns the steering gear.
func (d *Document) gear() solver.Gear {
	s := d.Steering
	switch {
	case s == nil || s.Type == NoGear:
		return solver.Gear{Kind: solver.NoGear}
	case s.Type == Rack:
		return solver.Gear{Kind: solver.Rack, Axis: direction(s.Axis, lateral)}
	}
	g := solver.Gear{
		Kind:       solver.CentreLink,
		PitmanAxis: direction(s.PitmanAxis, Vec3{}),
		IdlerAxis:  direction(s.IdlerAxis, Vec3{}),
		HasIdler:   s.HasIdler(),
	}
	for i, h := range solver.GearPoints {
		if p := s.point(h); p != nil {
			g.Points[i] = d.vec(*p)
		}
	}
	return g
}

// TyreRadius returns the tyre's radius in file units; where the file states none,
// it is the height of the left wheel's centre above the ground.
func (d *Document) TyreRadius() float64 {
	if d.Vehicle.TyreRadius > 0 {
		return d.Vehicle.TyreRadius
	}
	return d.Suspension.wheelCentre(Left)[2]
}

// wheelCentre returns the wheel centre of a side, zero where there is none.
func (s *Suspension) wheelCentre(side Side) Vec3 {
	kind, err := solver.KindByName(s.Type)
	if err != nil {
		return Vec3{}
	}
	return s.Corner(side).Points[nameOf(kind, solver.WheelCentreRole)]
}

// nameOf returns the name of a kind's side point of a role, or "".
func nameOf(kind *solver.Kind, role solver.Role) string {
	for _, h := range kind.SidePoints {
		if h.Role == role {
			return h.Name
		}
	}
	return ""
}
