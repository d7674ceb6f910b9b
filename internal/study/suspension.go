package study

import (
	"errors"
	"strings"

	"toewright/internal/strictjson"
	"toewright/solver"
)

// Suspension is the linkage of one axle. Its points are keyed as the solver's
// kinds of suspension name them, whatever their nesting in the file.
type Suspension struct {
	Type string
	// Adjuster is the key of the part that takes up camber and caster; empty is
	// the kind's first.
	Adjuster string
	Left     Corner
	Right    *Corner // Right is nil where it is the mirror image of the left. A solid axle always states it.
	Common   Points  // Common are the points of no side: a solid axle's links and drag link.
	DragSide Side    // DragSide is the side whose steering arm a solid axle's drag link pulls; else empty.
}

// Corner is one side of an axle.
type Corner struct {
	Points      Points
	Toe, Camber float64 // Toe and Camber are the static angles that the points stand for.
	// StudAxis is the direction in which spacers move the outer tie-rod ball; nil
	// is straight up.
	StudAxis *Vec3
	Damper   *Damper
	// Spring holds the loaded wheel; nil where the damper's line serves, and a strut's own
	// axis a strut. That of a solid axle has its moving mount on the beam, and no On.
	Spring  *Damper
	ArmFace *ArmFace
}

// Damper are the mounts of a damper, for travel that is read as its length, or of a
// spring.
type Damper struct {
	Body   Vec3   `json:"body" rule:"required"`
	Moving Vec3   `json:"moving" rule:"required"`
	On     string `json:"on" rule:"required,oneof=lower-arm|upper-arm|knuckle"` // On is the part that carries the moving mount.
}

// ArmFace is the face of the knuckle to which the steering arm is bolted.
type ArmFace struct {
	Point  Vec3   `json:"point" rule:"required"`
	Normal Vec3   `json:"normal" rule:"required"`
	Bolts  []Vec3 `json:"bolts,omitzero"`
}

// Mirrored returns the corner as it stands on the other side of the car.
func (c Corner) Mirrored() Corner {
	m := Corner{Points: c.Points.Mirrored(), Toe: c.Toe, Camber: c.Camber, StudAxis: mirroredVec(c.StudAxis)}
	m.Damper, m.Spring = c.Damper.mirrored(), c.Spring.mirrored()
	if f := c.ArmFace; f != nil {
		m.ArmFace = &ArmFace{Point: f.Point.Mirrored(), Normal: f.Normal.Mirrored()}
		for _, b := range f.Bolts {
			m.ArmFace.Bolts = append(m.ArmFace.Bolts, b.Mirrored())
		}
	}
	return m
}

// mounted lists the places of a corner that are no hardpoints.
func (c *Corner) mounted() (places []*Vec3) {
	for _, d := range []*Damper{c.Damper, c.Spring} {
		if d != nil {
			places = append(places, &d.Body, &d.Moving)
		}
	}
	if f := c.ArmFace; f != nil {
		places = append(places, &f.Point)
		for i := range f.Bolts {
			places = append(places, &f.Bolts[i])
		}
	}
	return places
}

// ShiftMounts moves what stands on the car beside its hardpoints onto another datum:
// dampers, springs and arm faces of the sides that the file has, and the planes of
// clearances, marks and what was plumbed and levelled.
func (d *Document) ShiftMounts(by Vec3) {
	places := d.Suspension.Left.mounted()
	if r := d.Suspension.Right; r != nil {
		places = append(places, r.mounted()...)
	}
	if d.Search != nil {
		for i := range d.Search.Limits {
			if p := d.Search.Limits[i].Plane; p != nil {
				places = append(places, &p.Point)
			}
		}
	}
	for _, p := range places {
		for k := range by {
			p[k] += by[k]
		}
	}
	d.Measured.shift(by)
}

// mirrored returns mounts, which may be nil, on the other side of the car.
func (d *Damper) mirrored() *Damper {
	if d == nil {
		return nil
	}
	return &Damper{Body: d.Body.Mirrored(), Moving: d.Moving.Mirrored(), On: d.On}
}

// mirroredVec mirrors a vector that may be absent.
func mirroredVec(v *Vec3) *Vec3 {
	if v == nil {
		return nil
	}
	m := v.Mirrored()
	return &m
}

// Corner returns one side of the axle, which for an absent right side is the
// mirror image of the left.
func (s *Suspension) Corner(side Side) Corner {
	switch {
	case side == Left:
		return s.Left
	case s.Right == nil:
		return s.Left.Mirrored()
	}
	return *s.Right
}

// BindNode fills the suspension from its JSON form, whose keys follow from its type.
func (s *Suspension) BindNode(sc strictjson.Scope, n *strictjson.Node) error {
	if n.Kind != strictjson.Object {
		return sc.Want(n, "an object")
	}
	kind, err := bindKind(sc, n)
	if err != nil {
		return err
	}
	*s = Suspension{Type: kind.Name}
	if isAxle(kind) {
		return s.bindAxle(kind, sc, n)
	}
	return s.bindCorners(kind, sc, n)
}

// UnbindNode returns the suspension's JSON form.
func (s Suspension) UnbindNode(path string) (*strictjson.Node, error) {
	kind, err := solver.KindByName(s.Type)
	if err != nil {
		return nil, &strictjson.Error{Path: path + ".type", Message: reason(err)}
	}
	if isAxle(kind) {
		return s.unbindAxle(kind, path)
	}
	return s.unbindCorners(kind, path)
}

// reason returns what a solver's error says without the package's name and, where
// it names one, the key, for messages that name a place in the file instead.
func reason(err error) string {
	var input *solver.InputError
	if errors.As(err, &input) {
		return input.Problem
	}
	return strings.TrimPrefix(err.Error(), "solver: ")
}

// isAxle reports whether the points of a kind stand under the suspension itself,
// with their sides inside, because some belong to no side.
func isAxle(k *solver.Kind) bool { return len(k.CommonPoints) > 0 }

// bindKind reads the type of a suspension.
func bindKind(sc strictjson.Scope, n *strictjson.Node) (*solver.Kind, error) {
	var name string
	value := n.Get("type")
	if value == nil {
		return nil, sc.In("type").Errorf(n, "missing")
	}
	if err := sc.In("type").Bind(value, &name); err != nil {
		return nil, err
	}
	kind, err := solver.KindByName(name)
	if err != nil {
		return nil, sc.In("type").Errorf(value, "%s", reason(err))
	}
	return kind, nil
}
