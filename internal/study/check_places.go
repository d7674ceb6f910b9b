package study

import (
	"fmt"
	"math"

	"toewright/solver"
)

// samePlace is the distance in mm below which two points are one, entered twice.
const samePlace = 0.5

// checkCoincident looks for two points of a corner in one place.
func checkCoincident(d *Document) []Finding {
	var found []Finding
	for _, c := range d.corners() {
		names := c.names()
		for i, a := range names {
			for _, b := range names[:i] {
				if d.Units.Millimetres(distance(c.points[a], c.points[b])) < samePlace {
					found = append(found, Finding{
						Path: c.path(a), Severity: Warning,
						Message: "stands in the same place as " + b, Suggestion: "was one of them entered twice?",
					})
				}
			}
		}
	}
	return found
}

// distance returns the distance of two points in their units.
func distance(a, b Vec3) float64 {
	return math.Hypot(math.Hypot(a[0]-b[0], a[1]-b[1]), a[2]-b[2])
}

// wheelSlack is how far a wheel centre's height may be from the tyre's radius, as
// a part of it: a tyre under load is a few percent lower than its size says.
const wheelSlack = 0.15

// checkWheel looks for wheel centres that do not stand a tyre's radius above the
// ground.
func checkWheel(d *Document) []Finding {
	var found []Finding
	r := d.TyreRadius()
	for _, c := range d.corners() {
		name := d.wheelName()
		v, ok := c.points[name]
		if ok && math.Abs(v[2]-r) > wheelSlack*r {
			found = append(found, Finding{
				Path: c.path(name), Severity: Warning,
				Message:    fmt.Sprintf("z is %g, but the tyre's radius is %g", v[2], r),
				Suggestion: "z counts from the ground: give all points the same datum, or correct the radius",
			})
		}
	}
	return found
}

// wheelName returns the name of the wheel centre, "" for an unknown suspension.
func (d *Document) wheelName() string {
	kind, err := solver.KindByName(d.Suspension.Type)
	if err != nil {
		return ""
	}
	return nameOf(kind, solver.WheelCentreRole)
}

// mirrorSlack is the distance in mm by which a right point may differ from the
// mirrored left one: frames are crooked by less.
const mirrorSlack = 25

// checkMirror looks for points of the right side that are far from the left's.
func checkMirror(d *Document) []Finding {
	if d.Suspension.Right == nil {
		return nil
	}
	var found []Finding
	mirrored := d.Suspension.Left.Points.Mirrored()
	path := d.sidePath(Right)
	for _, name := range sortedNames(mirrored) {
		off := distance(mirrored[name], d.Suspension.Right.Points[name])
		if d.Units.Millimetres(off) > mirrorSlack {
			found = append(found, Finding{
				Path: path(name), Severity: Note,
				Message:    fmt.Sprintf("is %.4g %s away from the mirror image of the left side", off, d.Units),
				Suggestion: "measure both sides again",
			})
		}
	}
	return found
}
