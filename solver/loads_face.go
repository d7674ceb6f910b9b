package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// faceStatics is the face of a steering arm in the static position, from the wheel
// centre, as a left one.
type faceStatics struct {
	home          Vec // of the point, in the design
	point, normal Vec
	centroid      Vec   // of the bolts
	bolts         []Vec // from it, in the face
	polar         float64
}

// face returns the face of side s. It returns an [*InputError] for a face without
// direction, and for bolts that all stand in one place.
func (x *Axle) face(s Side, f *BoltedFace, places []dvec) (*faceStatics, error) {
	st, _, k := x.knuckle(s)
	at := func(v Vec) Vec { return st.fromReference(s.Mirrored(v), places) }
	out := &faceStatics{home: s.Mirrored(f.Point), point: at(f.Point), normal: r3.Unit(k.turn(s.Mirrored(f.Normal)))}
	if math.IsNaN(out.normal.X) {
		return nil, &InputError{"armFace.normal" + selectionOf(s).Suffix(), "has no direction"}
	}
	if len(f.Bolts) < 2 {
		return out, nil
	}
	for _, b := range f.Bolts {
		out.centroid = r3.Add(out.centroid, r3.Scale(1/float64(len(f.Bolts)), at(b)))
	}
	for _, b := range f.Bolts {
		r := square(out.normal, r3.Sub(at(b), out.centroid))
		out.bolts = append(out.bolts, r)
		out.polar += r3.Norm2(r)
	}
	if !(out.polar > minLink*minLink) {
		return nil, &InputError{"armFace.bolts" + selectionOf(s).Suffix(), "all stand in one place of the face; state where each is"}
	}
	return out, nil
}

// set sets what a pull on the ball does to the arm, by the static knuckle. The shear
// of a bolt is by the elastic method for a group of equal bolts: an even share of the
// force in the face, and of the moment about the bolts' centroid a share that grows
// with the distance from it (any textbook of machine design).
func (f *faceStatics) set(s Side, pull, ball Vec, out *Forces) {
	shear := square(f.normal, pull)
	moment := r3.Cross(r3.Sub(ball, f.point), pull)
	out.Arm = ArmForces{
		Pull: r3.Dot(f.normal, pull), Shear: r3.Norm(shear),
		Twist: r3.Dot(f.normal, moment), Bend: r3.Norm(square(f.normal, moment)),
	}
	if s == Right { // turns are axial
		out.Arm.Twist = 0 - out.Arm.Twist
	}
	about := r3.Dot(f.normal, r3.Cross(r3.Sub(ball, f.centroid), pull))
	for _, r := range f.bolts {
		share := axpy(about/f.polar, r3.Cross(f.normal, r), r3.Scale(1/float64(len(f.bolts)), shear))
		out.Bolts = append(out.Bolts, r3.Norm(share))
	}
}
