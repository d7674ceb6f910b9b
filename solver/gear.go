package solver

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// GearKind is a type of steering gear.
type GearKind uint8

// The steering gears. With NoGear the inner balls are fixed to the body, as
// those of the toe links of a rear axle.
const (
	NoGear GearKind = iota
	Rack
	CentreLink
)

// String returns the name that study files use.
func (k GearKind) String() string {
	return [...]string{"none", "rack", "centre-link"}[k]
}

// Gear moves the inner tie rod balls, or the drag link's inner ball, with the
// steering input: of a rack its displacement along Axis in mm, of a centre link
// the pitman arm's turn in radians, right-handed about PitmanAxis.
type Gear struct {
	Kind GearKind
	// Axis is the direction in which a rack moves; its length does not matter.
	Axis Vec
	// PitmanAxis and IdlerAxis are directions, likewise.
	PitmanAxis, IdlerAxis Vec
	// Points are the hardpoints of a centre link, in the order of [GearPoints],
	// in V and straight ahead.
	Points [4]Vec
	// HasIdler is false for a pitman arm that carries only a drag link.
	HasIdler bool
}

// Places of a centre link's points.
const (
	pitmanPivot = iota
	pitmanBall
	idlerPivot
	idlerBall
)

// GearPoints are the hardpoints of a centre link.
var GearPoints = []Hardpoint{
	{"pitmanPivot", "pitman arm, pivot", NoRole, Chassis},
	{"pitmanBall", "pitman arm, ball", NoRole, GearBody},
	{"idlerPivot", "idler arm, pivot", NoRole, Chassis},
	{"idlerBall", "idler arm, ball", NoRole, GearBody},
}

// PointCount returns how many of [GearPoints] the gear has.
func (g *Gear) PointCount() int {
	switch {
	case g.Kind != CentreLink:
		return 0
	case !g.HasIdler:
		return 2
	}
	return len(GearPoints)
}

// Quantity returns what the steering input is: a length or an angle.
func (g *Gear) Quantity() Quantity {
	if g.Kind == CentreLink {
		return AngleQuantity
	}
	return LengthQuantity
}

// check returns an error where the gear cannot be built.
func (g *Gear) check() error {
	switch g.Kind {
	case Rack:
		if !(r3.Norm(g.Axis) > 0) || !finite(g.Axis) {
			return &InputError{Key: "steering.axis", Problem: "has no direction; state a vector such as [0, 1, 0]"}
		}
	case CentreLink:
		return g.checkLink()
	}
	return nil
}

func (g *Gear) checkLink() error {
	for i, a := range []struct {
		key  string
		axis Vec
	}{{"steering.pitmanAxis", g.PitmanAxis}, {"steering.idlerAxis", g.IdlerAxis}} {
		if i == 1 && !g.HasIdler {
			break
		}
		if !(r3.Norm(a.axis) > 0) || !finite(a.axis) {
			return &InputError{Key: a.key, Problem: "has no direction; state a vector such as [0, 0, 1]"}
		}
		arm := r3.Sub(g.Points[2*i+1], g.Points[2*i])
		if !(r3.Norm(r3.Cross(arm, r3.Unit(a.axis))) > minLink) {
			return &InputError{Key: "steering." + GearPoints[2*i+1].Name, Problem: fmt.Sprintf("stands on its arm's own axis; it must lie more than %g mm beside it", minLink)}
		}
	}
	if g.HasIdler && !(r3.Norm(r3.Sub(g.Points[idlerBall], g.Points[pitmanBall])) > minLink) {
		return &InputError{Key: "steering.idlerBall", Problem: "stands on the pitman ball; the centre link needs a length"}
	}
	return nil
}

// inner returns what moves the inner ball of side s that stands at p, in V,
// straight ahead. The motion is that of a left corner: mirrored for the right.
func (g *Gear) inner(p Vec, s Side) innerBall {
	switch g.Kind {
	case Rack:
		return rackBall{axis: s.Mirrored(r3.Unit(g.Axis))}
	case CentreLink:
		return newLinkBall(g, g.points(), fixed(p), s)
	}
	return nil
}

// rackBall moves with a rack.
type rackBall struct{ axis Vec }

func (b rackBall) shift(input float64) (d, rate Vec) {
	return r3.Scale(input, b.axis), b.axis
}

// Reach returns the interval of steering inputs, in mm or radians, within which
// the gear itself moves freely: all for a rack, up to the locks of the four-bar
// for a centre link.
func (g *Gear) Reach() (lo, hi float64) {
	if g.Kind != CentreLink || !g.HasIdler {
		return math.Inf(-1), math.Inf(1)
	}
	f := newFourBar(g, g.points())
	return f.lock(-1), f.lock(1)
}
