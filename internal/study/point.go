package study

import (
	"fmt"
	"slices"

	"toewright/solver"
)

// PlacedPoint is a hardpoint with its place in file units. Side is empty for a
// point of neither side: a solid axle's links and drag link, and those of the
// steering gear.
type PlacedPoint struct {
	Name  string
	Side  Side
	Place Vec3
}

// Points lists every point that stands in the file, in the order in which the
// solver has them: left, right where it is stated, common, steering gear.
func (d *Document) Points() []PlacedPoint {
	kind, err := solver.KindByName(d.Suspension.Type)
	if err != nil {
		return nil
	}
	var list []PlacedPoint
	for _, c := range d.corners() {
		for _, h := range kind.SidePoints {
			list = append(list, PlacedPoint{h.Name, c.side, c.points[h.Name]})
		}
	}
	for _, h := range kind.CommonPoints {
		list = append(list, PlacedPoint{Name: h.Name, Place: d.Suspension.Common[h.Name]})
	}
	return append(list, d.gearPoints()...)
}

// gearPoints lists the points of the steering gear.
func (d *Document) gearPoints() []PlacedPoint {
	var list []PlacedPoint
	if d.Steering == nil {
		return nil
	}
	for _, h := range solver.GearPoints {
		if v := d.Steering.point(h); v != nil {
			list = append(list, PlacedPoint{Name: h.Name, Place: *v})
		}
	}
	return list
}

// SetPoint moves a point of the document. A right side that was the mirror image
// is stated from then on. It returns an error for a point that the car does not
// have.
func (d *Document) SetPoint(p PlacedPoint) error {
	kind, err := solver.KindByName(d.Suspension.Type)
	if err != nil {
		return err
	}
	switch {
	case p.Side == "" && hasPoint(kind.CommonPoints, p.Name):
		d.Suspension.Common[p.Name] = p.Place
		return nil
	case p.Side == "" && d.setGearPoint(p):
		return nil
	case p.Side == Left && hasPoint(kind.SidePoints, p.Name):
		d.Suspension.Left.Points[p.Name] = p.Place
		return nil
	case p.Side == Right && hasPoint(kind.SidePoints, p.Name):
		d.stateRight().Points[p.Name] = p.Place
		return nil
	}
	return fmt.Errorf("study: %s %q is not a point of this car", p.Side, p.Name)
}

// stateRight returns the right side, which it makes of the left where it is the
// mirror image.
func (d *Document) stateRight() *Corner {
	if d.Suspension.Right == nil {
		right := d.Suspension.Left.Mirrored()
		d.Suspension.Right = &right
	}
	return d.Suspension.Right
}

// setGearPoint moves a point of the steering gear and reports whether it has it.
func (d *Document) setGearPoint(p PlacedPoint) bool {
	if d.Steering == nil {
		return false
	}
	for _, v := range append(d.Steering.pitman(), d.Steering.idler()...) {
		if v.key == p.Name && *v.value != nil && hasPoint(solver.GearPoints, p.Name) {
			*v.value = &p.Place
			return true
		}
	}
	return false
}

// hasPoint reports whether a name is that of a hardpoint in a list.
func hasPoint(hardpoints []solver.Hardpoint, name string) bool {
	return slices.ContainsFunc(hardpoints, func(h solver.Hardpoint) bool { return h.Name == name })
}
