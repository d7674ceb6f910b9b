package solver

import (
	"fmt"
	"math"
)

// Change sets one parameter of a car: Value is a change from the base car, or
// for an absolute parameter the setting itself, in mm or radians.
type Change struct {
	Parameter Parameter
	Sides     Selection
	Value     float64
}

// NewChange returns the change of the parameter that key names, which may end in
// @left or @right. It returns an [*InputError] for an unknown key or a value that
// is not a number or out of all proportion.
func NewChange(d *Design, key string, value float64) (Change, error) {
	p, sel, err := FindParameter(d, key)
	if err != nil {
		return Change{}, err
	}
	c := Change{Parameter: p, Sides: sel, Value: value}
	return c, c.check()
}

// maxChange is the largest change of a length, in mm: a car is no larger.
const maxChange = 1e4

func (c *Change) check() error {
	if c.Parameter.Quantity == AngleQuantity {
		if x := Angle(c.Value).Degrees(); !(math.Abs(x) <= 45) {
			return &InputError{c.Key(), fmt.Sprintf("is %.4g deg, must lie within 45 deg of 0", x)}
		}
		return nil
	}
	if !(math.Abs(c.Value) <= maxChange) {
		return &InputError{c.Key(), fmt.Sprintf("is %.4g mm, must lie within %g mm of 0", c.Value, maxChange)}
	}
	return nil
}

// Key returns the parameter's key with the side it is restricted to.
func (c *Change) Key() string { return c.Parameter.Key + c.Sides.Suffix() }

// applied is a change as it is applied, or a seed: a change of no amount that
// grows at the rate 1, by which a derivative is taken.
type applied struct {
	*Change
	seed bool
}

// amount returns what is added to a length.
func (a applied) amount() dual {
	if a.seed {
		return dual{0, 1}
	}
	return constant(a.Value)
}

// setting returns what a setpoint becomes that stood at now.
func (a applied) setting(now dual) dual {
	if a.seed {
		return now.plus(dual{0, 1})
	}
	return constant(a.Value)
}

// applyPoints moves the points of u that the car has elsewhere than the file
// says.
func (u *unit) applyPoints(pts []dvec, cs []applied) {
	for _, c := range cs {
		if c.Parameter.stage != pointStage {
			continue
		}
		first, end, step := u.span(&c.Parameter.point)
		for i := first; i < end; i += step {
			if u.moves(c.Change, i) {
				pts[i] = pts[i].plus(u.axisOf(c.Parameter.move, i).times(c.amount()))
			}
		}
	}
	if u.strut != nil {
		pts[u.strut.carried] = pts[u.strut.top]
	}
}

// applyParts moves the balls of exchanged parts, from pts into moved. Directions
// are those before any part is exchanged.
func (u *unit) applyParts(pts, moved []dvec, studs [2]Vec, cs []applied) {
	copy(moved, pts)
	for _, c := range cs {
		if c.Parameter.stage != partStage {
			continue
		}
		for i := range u.points {
			if u.moves(c.Change, i) {
				moved[i] = moved[i].plus(u.heading(c.Parameter.move, i, pts, studs).times(c.amount()))
			}
		}
	}
}

// span returns the points of u among which those of ref are: from first up to
// end by steps.
func (u *unit) span(ref *pointRef) (first, end, step int) {
	switch i := ref.index; {
	case ref.group == gearPoint || ref.group == commonPoint && !u.beam:
		return 0, 0, 1
	case ref.group == commonPoint:
		return axleLinks + i, axleLinks + i + 1, 1
	case ref.group == sidePoint && u.beam:
		return i, axleLinks, axleSidePoints
	case ref.group == sidePoint:
		return i, i + 1, 1
	}
	return 0, len(u.points), 1
}

// moves reports whether a change moves point i of u.
func (u *unit) moves(c *Change, i int) bool {
	p := &u.points[i]
	if !p.selected(c.Sides) || p.Name == "" {
		return false
	}
	ref := &c.Parameter.point
	switch ref.group {
	case byRole:
		return p.Role == ref.role
	case sidePoint:
		return p.selection != BothSides && u.sideIndex(i) == ref.index
	case commonPoint:
		return p.selection == BothSides && i-2*axleSidePoints == ref.index
	}
	return false
}

// selected reports whether a point belongs to one of the sides of s.
func (p *unitPoint) selected(s Selection) bool {
	return s == BothSides || p.selection == BothSides || s == p.selection
}

// sideIndex returns the index among the side points of a unit's point.
func (u *unit) sideIndex(i int) int {
	if u.beam {
		return i % axleSidePoints
	}
	return i
}

// axisOf returns the direction of a coordinate of point i: outboard for y of a
// point that has a side.
func (u *unit) axisOf(d direction, i int) dvec {
	v := along(int(d))
	if u.points[i].flipped {
		v.Y = -v.Y
	}
	return fixed(v)
}

// heading returns the unit direction in which a part change moves point i.
func (u *unit) heading(d direction, i int, pts []dvec, studs [2]Vec) dvec {
	switch d {
	case studDirection:
		return fixed(u.stud(i, studs))
	case armDirection:
		return u.armLine(i, pts)
	case sideDirection:
		a := u.armLine(i, pts)
		out := dvec{v: Vec{X: -a.v.Y, Y: a.v.X}, d: Vec{X: -a.d.Y, Y: a.d.X}}
		if out.v.Y*u.wheelOf(i).outboard() < 0 {
			out = out.times(constant(-1))
		}
		return out
	}
	return u.axisOf(d, i)
}

// stud returns the direction of a stack of spacers at point i, vertical where
// none is stated.
func (u *unit) stud(i int, studs [2]Vec) Vec {
	w := u.wheelOf(i)
	v := studs[w.side]
	if v == (Vec{}) {
		return up
	}
	if !u.beam {
		v = w.side.Mirrored(v)
	}
	return fixed(v).unit().v
}

// wheelOf returns the wheel whose side point i belongs to.
func (u *unit) wheelOf(i int) *wheelSpec {
	if u.beam && u.points[i].selection == RightOnly {
		return &u.wheels[1]
	}
	return &u.wheels[0]
}

// armLine returns the level direction from the steering axis to the ball i, at
// the height of the ball.
func (u *unit) armLine(i int, pts []dvec) dvec {
	at, dir := u.steeringAxis(u.wheelOf(i), pts)
	t := pts[i].z().less(at.z()).over(dir.z())
	return pts[i].less(at.plus(dir.times(t))).levelUnit()
}
