package study

import (
	"strings"

	"toewright/solver"
)

// PointPath returns the path by which a finding names a point: "suspension.left.strutTop",
// for a solid axle "suspension.kingpins.left.0", for the gear "steering.idlerBall".
func (d *Document) PointPath(p PlacedPoint) string {
	switch {
	case p.Side != "":
		return d.sidePath(p.Side)(p.Name)
	case hasPoint(solver.GearPoints, p.Name):
		return "steering." + p.Name
	}
	return "suspension." + p.Name
}

// AnglePath returns the path by which [Sources] know the static "toe" or "camber" of a
// side.
func (d *Document) AnglePath(side Side, key string) string {
	if d.Suspension.Common != nil {
		if l, r := &d.Suspension.Left, d.Suspension.Right; key == "toe" && l.Toe == r.Toe || key == "camber" && l.Camber == r.Camber {
			return key // one number for both
		}
		return key + "." + string(side)
	}
	return string(side) + "." + key
}

// StudPath returns the path by which [Sources] know a side's stud axis.
func (d *Document) StudPath(side Side) string {
	if d.Suspension.Common != nil {
		return "studAxes." + string(side)
	}
	return string(side) + ".studAxis"
}

// SourcePath returns the path by which [Sources] know a point.
func (d *Document) SourcePath(p PlacedPoint) string {
	return strings.TrimPrefix(d.PointPath(p), "suspension.")
}
