package solver

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Design is a car's front or rear axle as it was measured: hardpoints in its
// static position, the setpoints they stand for, and the steering gear. It is
// plain input; nothing here changes it.
type Design struct {
	Kind *Kind
	// Points are the hardpoints of each side in the order of Kind.SidePoints,
	// in vehicle axes: right-hand points have y negative.
	Points [2][]Vec
	// Common are the points of neither side, in the order of Kind.CommonPoints.
	Common []Vec
	Gear   Gear
	// Toe and Camber are the static angles that the points stand for.
	Toe, Camber [2]Angle
	// StudAxis is the direction in which a stack of spacers moves the tie rod's
	// outer ball; zero means vertical.
	StudAxis [2]Vec
	// DragSide is the side whose knuckle a solid axle's drag link pulls.
	DragSide Side
	// Adjuster is the key of the part that takes up camber and caster; empty
	// means the kind's default.
	Adjuster string
	// Wheelbase and TyreRadius are in mm; 0 means not stated.
	Wheelbase, TyreRadius float64
}

// minLink is the shortest link, in mm, that counts as one: below it two joints
// are the same point, measured twice.
const minLink = 1e-3

// maxPlace is the farthest a coordinate may be from the origin, in mm. Beyond it
// rounding alone exceeds the residual that a pose must meet.
const maxPlace = 1e5

// InputError reports what is wrong with one key or point of a car.
type InputError struct {
	Key     string // as the study file names it
	Problem string // what is wrong and what to do
}

func (e *InputError) Error() string { return fmt.Sprintf("solver: %s %s", e.Key, e.Problem) }

// Check returns an error where the design cannot be assembled: a point that is
// missing or no number, a link without length, a gear without direction.
func (d *Design) Check() error {
	_, err := d.checkedUnits()
	return err
}

// checkedUnits returns the units of a design that can be used.
func (d *Design) checkedUnits() ([]*unit, error) {
	if err := d.checkValues(); err != nil {
		return nil, err
	}
	units := d.Kind.layout.units(d)
	return units, d.checkLinks(units)
}

// checkValues refuses values that cannot be used, whatever is made of them.
func (d *Design) checkValues() error {
	if d.Kind == nil {
		return &InputError{"suspension.type", "is missing"}
	}
	for _, s := range Sides {
		if err := checkPoints("suspension."+s.String()+".", d.Kind.SidePoints, d.Points[s]); err != nil {
			return err
		}
		if err := d.checkSetpoints(s); err != nil {
			return err
		}
	}
	if err := checkPoints("suspension.", d.Kind.CommonPoints, d.Common); err != nil {
		return err
	}
	if err := d.checkAdjuster(); err != nil {
		return err
	}
	return d.Gear.check()
}

func checkPoints(prefix string, want []Hardpoint, have []Vec) error {
	if len(have) != len(want) {
		return &InputError{prefix + "points", fmt.Sprintf("are %d, want %d", len(have), len(want))}
	}
	for i, p := range have {
		if !finite(p) || !(r3.Norm(p) <= maxPlace) {
			return &InputError{prefix + want[i].Name, fmt.Sprintf("must be three numbers within %g mm of the origin", maxPlace)}
		}
	}
	return nil
}

// maxSetpoint bounds static toe and camber, in degrees.
const maxSetpoint = 30.0

func (d *Design) checkSetpoints(s Side) error {
	for _, v := range []struct {
		key string
		a   Angle
	}{{"toe", d.Toe[s]}, {"camber", d.Camber[s]}} {
		if x := v.a.Degrees(); !(x >= -maxSetpoint && x <= maxSetpoint) {
			return &InputError{"suspension." + s.String() + "." + v.key, fmt.Sprintf("is %.4g deg, must lie within %g deg of 0", x, maxSetpoint)}
		}
	}
	return nil
}

func (d *Design) checkAdjuster() error {
	if d.Adjuster == "" {
		return nil
	}
	for _, a := range d.Kind.Adjusters() {
		if a.Key == d.Adjuster {
			return nil
		}
	}
	return &InputError{"suspension.adjuster", fmt.Sprintf("%q is none of this suspension's adjusters", d.Adjuster)}
}

// checkLinks refuses links without length and steering axes without rise.
func (d *Design) checkLinks(units []*unit) error {
	for _, u := range units {
		pts := u.places(d)
		err := u.links(func(r *rodSpec) error {
			if r3.Norm(r3.Sub(pts[r.outer].v, pts[r.inner].v)) > minLink {
				return nil
			}
			return &InputError{u.keyOf(r.outer), fmt.Sprintf("stands on %s: the %s has no length", u.points[r.inner].Name, r.name)}
		})
		if err != nil {
			return err
		}
		if err := u.checkArms(pts); err != nil {
			return err
		}
		if err := u.checkAxis(func(i int) Vec { return pts[i].v }); err != nil {
			return err
		}
	}
	return nil
}

// checkArms refuses an arm, two rods to one ball, whose three joints are in line:
// it would hold the ball no better than one rod.
func (u *unit) checkArms(pts []dvec) error {
	for _, arm := range u.arms {
		a, b := sub(pts[arm.front].v, pts[arm.ball].v), sub(pts[arm.rear].v, pts[arm.ball].v)
		if !(r3.Norm(r3.Cross(a, b)) > minLink*(r3.Norm(a)+r3.Norm(b))) {
			return &InputError{u.keyOf(arm.ball), fmt.Sprintf("lies in line with %s and %s: the three must make a triangle", u.points[arm.front].Name, u.points[arm.rear].Name)}
		}
	}
	if u.hinged() {
		return u.checkHinge(pts)
	}
	return nil
}

// minHingeRise is the least distance, in mm, of a kingpin's upper end from the plane
// of its lower end and the hinge of a swing arm. The arm is held as rods from the
// hinge to both ends; in that plane they would not fix the one against the other.
const minHingeRise = 1.0

// checkHinge refuses a swing arm whose kingpin lies in one plane with its hinge.
func (u *unit) checkHinge(pts []dvec) error {
	a, upper := &u.arms[0], u.arms[1].ball
	front := pts[a.front].v
	n := r3.Unit(r3.Cross(sub(pts[a.rear].v, front), sub(pts[a.ball].v, front)))
	if d := math.Abs(r3.Dot(n, sub(pts[upper].v, front))); !(d > minHingeRise) {
		return &InputError{u.keyOf(upper), fmt.Sprintf("lies %.4g mm off the plane of %s, %s and %s, must be more than %g mm: the kingpin must stand across the arm",
			d, u.points[a.front].Name, u.points[a.rear].Name, u.points[a.ball].Name, minHingeRise)}
	}
	return nil
}

// minAxisRise is the least rise of a steering axis or a strut, in mm. Below it
// an error of 0.01 mm in one joint moves the caster by more than half a degree.
const minAxisRise = 1.0

// checkAxis refuses an axis or a strut that does not rise; at gives the places of the
// unit's points.
func (u *unit) checkAxis(at func(i int) Vec) error {
	if s := u.strut; s != nil && !(at(s.top).Z-at(s.lower).Z > minAxisRise) {
		return &InputError{u.keyOf(s.lower), fmt.Sprintf("must lie more than %g mm below strutTop", minAxisRise)}
	}
	for _, w := range u.wheels {
		if w.axis.kind == screwAxis {
			continue
		}
		if rise := at(w.axis.upper).Z - at(w.axis.lower).Z; !(rise > minAxisRise) {
			return &InputError{u.keyOf(w.axis.upper), fmt.Sprintf("lies %.4g mm above %s, must be more than %g mm: is the pair swapped?", rise, u.points[w.axis.lower].Name, minAxisRise)}
		}
	}
	return nil
}

// keyOf returns the name of a unit's point with its side, for messages.
func (u *unit) keyOf(i int) string {
	p := &u.points[i]
	return p.Name + p.selection.Suffix()
}

// places returns the points of a unit as the design has them, in the unit's
// frame.
func (u *unit) places(d *Design) []dvec {
	pts := make([]dvec, 0, len(u.points))
	for _, w := range u.wheels {
		for _, p := range d.Points[w.side] {
			if !u.beam {
				p = w.side.Mirrored(p)
			}
			pts = append(pts, fixed(p))
		}
	}
	if u.beam {
		for _, p := range d.Common {
			pts = append(pts, fixed(p))
		}
	}
	if u.strut != nil {
		pts = append(pts, pts[u.strut.top])
	}
	return pts
}
