package solver

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// solidAxle is a beam located by four links, with a knuckle on a kingpin at each
// end, a tie rod between the steering arms and a drag link from the gear to one
// of the knuckles.
var solidAxle = &Kind{
	Name:  "solid-axle",
	Label: "Solid axle",
	SidePoints: []Hardpoint{
		{"kingpins.0", "kingpin, upper end", UpperBallRole, Beam},
		{"kingpins.1", "kingpin, lower end", LowerBallRole, Beam},
		{"steeringArmBalls", "tie rod ball on the steering arm", TieRodOuterRole, Knuckle},
		{"wheelCentres", "wheel centre", WheelCentreRole, Knuckle},
	},
	CommonPoints: solidAxlePoints(),
	layout:       axleLayout{},
}

func solidAxlePoints() []Hardpoint {
	var ps []Hardpoint
	for i := range 4 {
		ps = append(ps,
			Hardpoint{fmt.Sprintf("links.%d.inner", i), fmt.Sprintf("link %d, body end", i), NoRole, Chassis},
			Hardpoint{fmt.Sprintf("links.%d.outer", i), fmt.Sprintf("link %d, axle end", i), NoRole, Beam})
	}
	return append(ps,
		Hardpoint{"dragLink.inner", "drag link, ball on the gear", DragInnerRole, GearBody},
		Hardpoint{"dragLink.outer", "drag link, ball on the arm", DragOuterRole, DragKnuckle})
}

// axleLayout joins a solid axle.
type axleLayout struct{}

// Places of an axle's points within its unit: those of the left side, of the
// right, then the common ones.
const (
	axleUpper, axleLower, axleArm, axleWheel = 0, 1, 2, 3
	axleSidePoints                           = 4
	axleLinks                                = 2 * axleSidePoints
	axleDrag                                 = axleLinks + 8
	axlePoints                               = axleDrag + 2
)

func (axleLayout) units(d *Design) []*unit {
	u := &unit{beam: true}
	for _, s := range Sides {
		for _, p := range d.Kind.SidePoints {
			body := mainBody
			if p.Body == Knuckle {
				body = leftBody + int(s)
			}
			u.points = append(u.points, unitPoint{p, selectionOf(s), s == Right, body})
		}
		base := int(s) * axleSidePoints
		u.wheels = append(u.wheels, wheelSpec{
			side: s, flipped: s == Right, body: leftBody + int(s),
			centre: base + axleWheel, arm: base + axleArm,
			axis: axisSpec{ballJointAxis, base + axleLower, base + axleUpper},
		})
	}
	for _, p := range d.Kind.CommonPoints {
		u.points = append(u.points, unitPoint{p, BothSides, false, axleBody(p.Body, d.DragSide)})
	}
	for i := range 4 {
		u.rods = append(u.rods, rodSpec{fmt.Sprintf("links.%d", i), axleLinks + 2*i, axleLinks + 2*i + 1})
	}
	u.steer = []rodSpec{
		tieRodRod:   {"tie rod", axleSidePoints + axleArm, axleArm},
		dragLinkRod: {"drag link", axleDrag, axleDrag + 1},
	}
	u.adjuster = adjuster{pair: upperLinks(d)}
	return []*unit{u}
}

func (axleLayout) outline(*Kind) Outline { return Outline{Axis: [2]int{axleLower, axleUpper}} }

func axleBody(b Body, drag Side) int {
	switch b {
	case Beam:
		return mainBody
	case DragKnuckle:
		return leftBody + int(drag)
	}
	return chassisBody
}

// lateralSlope is the sideways part, beside the fore-and-aft part, from which on
// a link is a panhard rod: more than a triangulated upper link has.
const lateralSlope = 3.0

// upperLinks returns the indices of the links whose lengths set the caster: the
// highest at the axle of those that run fore and aft, two where no panhard rod
// is among the four, else one, named twice.
func upperLinks(d *Design) [2]int {
	var lengthwise []int
	for i := range 4 {
		v := sub(d.Common[2*i+1], d.Common[2*i])
		if math.Abs(v.Y) < lateralSlope*math.Abs(v.X) {
			lengthwise = append(lengthwise, i)
		}
	}
	slices.SortStableFunc(lengthwise, func(a, b int) int {
		return cmp.Compare(d.Common[2*b+1].Z, d.Common[2*a+1].Z)
	})
	switch len(lengthwise) {
	case 4:
		return [2]int{lengthwise[0], lengthwise[1]}
	case 0:
		return [2]int{0, 0}
	}
	return [2]int{lengthwise[0], lengthwise[0]}
}
