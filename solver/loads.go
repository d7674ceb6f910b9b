package solver

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Spring is a spring's two mounts, as those of a damper.
type Spring Damper

// BoltedFace is the face of a knuckle to which the steering arm is bolted, in vehicle
// axes in the static position of the design as measured.
type BoltedFace struct {
	Point  Vec   // in the face, to which moments are taken
	Normal Vec   // square to it, from the knuckle to the arm
	Bolts  []Vec // two at least for their shares, else none
}

// Stud is that of a tie rod's outer ball, in mm: its diameter where it is clamped, and
// the height of the ball over the face that clamps it.
type Stud struct{ Diameter, Height float64 }

// LoadParts are what forces are taken on beside the axle itself. What is nil is not
// stated and its figures are left out.
type LoadParts struct {
	Springs [2]*Spring // where nil, a strut's own axis serves a strut
	Faces   [2]*BoltedFace
	Stud    *Stud
	// Stiffness is that of what gives, N/mm, by the names of [Design.Members]: at the pivot
	// of an arm alike in every direction; at a strut's top mount square to the strut's
	// axis; along links and rods; of the gear along a rack's axis, or at the pitman ball.
	Stiffness map[string]float64
}

// WheelLoad is what acts on one wheel, as if it were locked to its knuckle: nothing
// where zero.
type WheelLoad struct {
	Force  Vec // N, in vehicle axes
	Moment Vec // N mm, by the right hand in vehicle axes
	// AtCentre says that the force acts at the wheel centre, else at the contact: the
	// lowest point of the wheel's plane at the tyre's radius.
	AtCentre bool
}

// LoadCase is where the axle stands and what then acts on its wheels.
type LoadCase struct {
	Attitude
	Wheels [2]WheelLoad
}

// Forces are what a load case makes of one side. Links have no weight, joints no
// friction, the gear is held, and the spring holds the wheel at its travel.
type Forces struct {
	TieRod   float64 // N, positive where the rod is pulled apart
	DragLink float64 // likewise; of a solid axle, the same on both sides
	Spring   float64 // N, positive where it is pushed together
	Arm      ArmForces
	// Bolts are the shear of each bolt of the arm, N, in their order; none where the face
	// or its bolts are not stated.
	Bolts []float64
	// StudBending is the stress, MPa, of the stud where it is clamped, from the force of
	// the rod square to it: 32 F h/(π d³), a round beam clamped at one end (any textbook
	// of strength of materials).
	StudBending float64
	// Give is the change of the wheel's toe, rad, toe-in positive, that each member makes by
	// giving way, in the order of [Design.Members]: to first order, the wheel centre held at
	// its height. None where a stiffness is not stated.
	Give []float64
}

// ArmForces are what the tie rod does to the steering arm at the point of its face.
type ArmForces struct {
	Pull  float64 // N along the normal, positive off the face
	Shear float64 // N in the face
	Twist float64 // N mm about the normal, by the right hand in vehicle axes
	Bend  float64 // N mm, size of the moment in the face
}

// SpringError reports a loaded wheel that no spring holds at its travel.
type SpringError struct{ Side Side }

func (e *SpringError) Error() string {
	return fmt.Sprintf("solver: %s side: the loaded wheel needs a spring that holds it: state the spring's two mounts", e.Side)
}

// Statics finds the forces in one axle. It is immutable and may be shared.
type Statics struct {
	axle   *Axle
	sides  [2]sideStatics
	giving *givingStatics // nil where a stiffness is not stated
}

// sideStatics are the parts of a side, in the static position and the unit's frame.
type sideStatics struct {
	spring *mount // nil where none is stated
	face   *faceStatics
	stud   *studStatics
}

// studStatics is a stud with a candidate's stack under its ball.
type studStatics struct {
	axis             Vec // of length 1
	diameter, height float64
}

// Statics returns what finds the forces in x, on the sides that were assembled. It returns an [*InputError] for a spring
// on an arm that the suspension has not, and for bolts that all stand in one place.
func (x *Axle) Statics(p *LoadParts) (*Statics, error) {
	out := &Statics{axle: x}
	if len(p.Stiffness) > 0 && x.sides == BothSides {
		out.giving = x.giving(p.Stiffness)
	}
	for _, s := range Sides {
		if !x.sides.Includes(s) {
			continue
		}
		st, places := x.unitOf(s)
		side := &out.sides[s]
		if spring := p.Springs[s]; spring != nil {
			m, err := st.mount(s, Damper(*spring), places, "spring"+selectionOf(s).Suffix())
			if err != nil {
				return nil, err
			}
			side.spring = &m
		}
		if f := p.Faces[s]; f != nil && x.beam == nil {
			face, err := x.face(s, f, places)
			if err != nil {
				return nil, err
			}
			side.face = face
		}
		if p.Stud != nil {
			side.stud = x.stud(s, p.Stud)
		}
	}
	return out, nil
}

// stud returns the stud of side s.
func (x *Axle) stud(s Side, d *Stud) *studStatics {
	st, w, k := x.knuckle(s)
	return &studStatics{
		axis:     r3.Unit(k.turn(st.u.stud(w.arm, x.Design().StudAxis))),
		diameter: d.Diameter, height: d.Height + math.Abs(x.stack(s)),
	}
}

// stack returns by how much the changes of x move the tie rod's outer ball of side s
// along its stud, mm.
func (x *Axle) stack(s Side) float64 {
	sum := 0.0
	for i := range x.changes {
		c := &x.changes[i]
		if c.Parameter.stage == partStage && c.Parameter.move == studDirection && c.Sides.Includes(s) {
			sum += c.Value
		}
	}
	return sum
}

// bending returns the stress in the stud under a force on its ball; axis is where the
// stud points now.
func (d *studStatics) bending(force, axis Vec) float64 {
	across := r3.Norm(square(axis, force))
	return 32 * across * d.height / (math.Pi * d.diameter * d.diameter * d.diameter)
}

// Forces sets out to the forces in a load case. It allocates nothing where out has
// room for bolts and members. It returns a [*ReachError] where the linkage cannot be moved
// there, a [*SpringError] where a loaded wheel has no spring, and an [*InputError]
// where spring and links do not hold the wheel.
func (k *Statics) Forces(ws *Workspace, in *LoadCase, out *[2]Forces) error {
	x := k.axle
	if err := x.checkSteer(in.Steer); err != nil {
		return err
	}
	for s := range out {
		out[s] = Forces{Bolts: out[s].Bolts[:0], Give: out[s].Give[:0]}
	}
	if x.beam != nil {
		return k.beam(ws, in, out)
	}
	var gear [2]gearGive
	for _, s := range Sides {
		if !x.sides.Includes(s) {
			continue
		}
		if err := k.corner(ws, in, s, &out[s], &gear[s]); err != nil {
			return err
		}
	}
	if k.giving != nil {
		k.giving.giveOfGear(&gear, out)
	}
	return nil
}

// idle reports whether nothing acts on the wheel.
func (l *WheelLoad) idle() bool { return l.Force == (Vec{}) && l.Moment == (Vec{}) }

// wrench returns the load about the wheel centre, whose spin axis is e.
func (l *WheelLoad) wrench(e Vec, radius float64) wrench {
	w := wrench{force: l.Force, moment: l.Moment}
	if !l.AtCentre {
		w.moment = r3.Add(w.moment, r3.Cross(r3.Scale(-radius, r3.Unit(square(e, up))), l.Force))
	}
	return w
}

// mirrored returns the load as it stands on the other side of the car's centre plane.
func (l *WheelLoad) mirrored(s Side) WheelLoad {
	m := *l
	if s == Right {
		m.Force = s.Mirrored(l.Force)
		m.Moment = r3.Scale(-1, s.Mirrored(l.Moment))
	}
	return m
}

// unheld reports that the wheels have a freedom left.
func unheld(s Side, travel float64) error {
	return &InputError{"spring" + selectionOf(s).Suffix(), fmt.Sprintf("does not hold the %s wheel at travel %.4g mm: its length does not change with the wheel's travel there, or the linkage is at its lock", s, travel)}
}
