package solver

import (
	"fmt"
	"strings"
)

// Kind is a type of suspension: its hardpoints and how they are joined. A new
// kind is one file like kind_strut.go and one line in [Kinds].
type Kind struct {
	Name         string      // as study files name it
	Label        string      // as people read it
	SidePoints   []Hardpoint // of each side, mirrored right to left
	CommonPoints []Hardpoint // of the whole axle
	Crossing     []string    // side points that may stand beyond the car's centre plane
	layout       layout
}

// Hardpoint is a named point of a kind of suspension.
type Hardpoint struct {
	Name  string // as parameter keys name it, such as "rods.0.inner"
	Label string
	Role  Role
	Body  Body
}

// Role says what a hardpoint is to the parameters that move parts, whatever its
// name in a kind of suspension.
type Role uint8

// The roles of hardpoints.
const (
	NoRole Role = iota
	TieRodInnerRole
	TieRodOuterRole
	LowerBallRole
	UpperBallRole
	WheelCentreRole
	DragInnerRole
	DragOuterRole
)

// Body is the rigid body that a hardpoint belongs to.
type Body uint8

// The bodies of an axle. A gear carries its point along with the steering.
const (
	Chassis Body = iota
	GearBody
	Knuckle
	Beam
	DragKnuckle // the knuckle that the drag link pulls
)

// layout is how the hardpoints of a kind are joined.
type layout interface {
	// units returns what is assembled by itself: two
	// corners, or a whole axle.
	units(d *Design) []*unit
	// outline says how the parts of a side join.
	outline(k *Kind) Outline
}

// Outline is how the parts of a side join, by indices of its points: what a picture
// of any kind needs.
type Outline struct {
	// Rods run from the body to the knuckle; two to one point are an arm. A beam's end
	// has none.
	Rods []OutlineRod
	// Axis are the lower and the upper point of the steering axis, Strut the lower point
	// and the mount of a strut: equal where there is none.
	Axis, Strut [2]int
}

// OutlineRod is a rod between two of a side's points.
type OutlineRod struct{ Inner, Outer int }

// Outline returns how the parts of a side of this kind join.
func (k *Kind) Outline() Outline { return k.layout.outline(k) }

// Kinds returns all kinds of suspension that can be solved.
func Kinds() []*Kind {
	return []*Kind{doubleWishbone, strutKind, multiLink, swingArm, solidAxle}
}

// KindByName returns the kind that study files call name. The error for a kind
// of the trade that is not solved says what to use instead.
func KindByName(name string) (*Kind, error) {
	for _, k := range Kinds() {
		if k.Name == name {
			return k, nil
		}
	}
	if advice, ok := notModelled[name]; ok {
		return nil, fmt.Errorf("solver: suspension type %q is not modelled: %s", name, advice)
	}
	return nil, fmt.Errorf("solver: suspension type %q is unknown; use one of %s", name, strings.Join(kindNames(), ", "))
}

func kindNames() []string {
	var names []string
	for _, k := range Kinds() {
		names = append(names, k.Name)
	}
	return names
}

// notModelled maps what the trade has and the solver has not to what serves
// instead.
var notModelled = map[string]string{
	"leaf-spring":        "a leaf bends, so its ends trace no rigid link's path; state the axle as a solid-axle whose two lower links stand for the leaves' front halves",
	"radius-arm":         "an arm fixed to the axle twists in its bushings; state the axle as a solid-axle with two links in place of each arm",
	"trailing-arm":       "the wheel hangs on one hinge and has no steering axis; state it as a multi-link with two rods on each side of the hinge, or as a swing-arm where the arm carries a kingpin and steers",
	"semi-trailing-arm":  "the wheel hangs on one hinge and has no steering axis; state it as a multi-link with two rods on each side of the hinge, or as a swing-arm where the arm carries a kingpin and steers",
	"twist-beam":         "the beam bends, which a rigid linkage leaves out",
	"swing-axle":         "the wheel hangs on one hinge and has no steering axis; state it as a multi-link with two rods on each side of the hinge, or as a swing-arm where the arm carries a kingpin and steers",
	"sliding-pillar":     "use strut with the lower arm's ball on the pillar's axis",
	"de-dion":            "use solid-axle without kingpins only once a rigid beam without steering is offered; until then a multi-link on each side",
	"tie-rod-drag-link":  "a drag link that drives the tie rod needs a joint on the tie rod; use solid-axle with the drag link on the arm that the tie rod's end shares",
	"three-piece":        "a track rod in three pieces is a centre link: use steering type centre-link with the middle piece as the link",
	"three-piece-tierod": "a track rod in three pieces is a centre link: use steering type centre-link with the middle piece as the link",
}

// withRole returns the indices of the hardpoints of a role.
func withRole(ps []Hardpoint, r Role) []int {
	var is []int
	for i, p := range ps {
		if p.Role == r {
			is = append(is, i)
		}
	}
	return is
}
