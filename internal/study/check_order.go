package study

import (
	"fmt"

	"toewright/solver"
)

// order is a pair of points that stands in one order on every car.
type order struct {
	more, less string // more lies further up, forward or outboard than less.
	way        way
}

// way is the direction in which a pair is ordered.
type way uint8

const (
	upward way = iota
	forward
	outward
)

// words are how a message says that a point lies on the wrong side of another.
var words = [...]string{"not above", "not ahead of", "not outboard of"}

// orders are the pairs, by the names of points; those that a suspension does not
// have do not matter. Pairs that the solver insists on are not among them.
var orders = []order{
	{"lowerFrontPivot", "lowerRearPivot", forward},
	{"upperFrontPivot", "upperRearPivot", forward},
	{"upperFrontPivot", "lowerFrontPivot", upward},
	{"upperRearPivot", "lowerRearPivot", upward},
	{"lowerBallJoint", "lowerFrontPivot", outward},
	{"lowerBallJoint", "lowerRearPivot", outward},
	{"upperBallJoint", "upperFrontPivot", outward},
	{"upperBallJoint", "upperRearPivot", outward},
	{"tieRodOuter", "tieRodInner", outward},
	{"wheelCentre", "lowerBallJoint", outward},
	{"wheelCentre", "tieRodInner", outward},
	{"strutTop", "lowerBallJoint", upward},
	{"rods.0.outer", "rods.0.inner", outward},
	{"rods.1.outer", "rods.1.inner", outward},
	{"rods.2.outer", "rods.2.inner", outward},
	{"rods.3.outer", "rods.3.inner", outward},
	{"rods.0.outer", "rods.2.outer", upward},
	{"rods.1.outer", "rods.3.outer", upward},
	{"wheelCentres", "kingpins.1", outward},
	{"kingpinLower", "frontPivot", outward},
	{"kingpinLower", "rearPivot", outward},
	{"wheelCentre", "kingpinLower", outward},
}

// checkOrder looks for pairs that stand the wrong way round.
func checkOrder(d *Document) []Finding {
	var found []Finding
	for _, c := range d.corners() {
		for _, o := range orders {
			found = append(found, c.checkPair(o)...)
		}
	}
	return append(found, d.checkDragLink()...)
}

// checkPair looks at one pair of a corner.
func (c *placedCorner) checkPair(o order) []Finding {
	more, ok1 := c.points[o.more]
	less, ok2 := c.points[o.less]
	if !ok1 || !ok2 || c.measure(o.way, more) > c.measure(o.way, less) {
		return nil
	}
	return []Finding{{
		Path: c.path(o.more), Severity: Warning,
		Message:    fmt.Sprintf("lies %s %s: %g and %g", words[o.way], o.less, more[o.way.axis()], less[o.way.axis()]),
		Suggestion: "are the two swapped?",
	}}
}

// axis returns the coordinate of a way: 0 for x, 1 for y, 2 for z.
func (w way) axis() int { return [...]int{2, 0, 1}[w] }

// measure returns how far a point lies in a way.
func (c *placedCorner) measure(w way, v Vec3) float64 {
	if w == outward {
		return c.outboard(v)
	}
	return v[w.axis()]
}

// checkDragLink looks for a drag link whose outer ball is not on the side that it
// is said to pull.
func (d *Document) checkDragLink() []Finding {
	kind, err := solver.KindByName(d.Suspension.Type)
	if err != nil || d.Suspension.DragSide == "" {
		return nil
	}
	for _, h := range kind.CommonPoints {
		y := d.Suspension.Common[h.Name][1]
		if h.Role == solver.DragOuterRole && (y < 0) != (d.Suspension.DragSide == Right) {
			return []Finding{{
				Path: "suspension." + h.Name, Severity: Warning,
				Message:    fmt.Sprintf("y is %g, but the link pulls the %s arm", y, d.Suspension.DragSide),
				Suggestion: "is the side or the sign of y wrong?",
			}}
		}
	}
	return nil
}
