package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Joint is a ball joint at the end of a rod.
type Joint struct {
	// Axis is the direction, in vehicle axes, on which the joint stands neutral: that
	// in the file's own static position, from which a part that carries it takes it
	// along. Its length and sense do not matter.
	Axis Vec
	// Inline says that the rod stands neutral along Axis, as in the socket of a
	// rack's end; otherwise square to it, as on a stud.
	Inline bool
}

// misalignment returns the angle, 0 to 90 deg, by which a rod of the given direction stands
// off neutral at a joint whose axis points along axis now: see [Joint].
func misalignment(rod, axis Vec, inline bool) Angle {
	sine, cosine := norm(r3.Cross(rod, axis)), math.Abs(r3.Dot(rod, axis))
	if inline {
		return Angle(atan2(sine, cosine))
	}
	return Angle(atan2(cosine, sine))
}

// Joints are the ball joints whose angles a sweep measures, by side. The axis of
// an outer joint is a stud fixed in the knuckle, which turns with it through setpoints
// that are re-solved and along the travel; that of an inner one stays with the body for
// a rack or no gear and is carried by a centre link.
type Joints struct {
	// Inner is that of the tie rod; of a solid axle that of its drag link, by the side
	// that is measured: one joint, and so the same on both.
	Inner [2]Joint
	Outer [2]Joint
	// DragOuter is the drag link's joint on the knuckle.
	DragOuter Joint
}

// Joints returns the joints as they are usually made: outer studs along the
// design's stud axis, vertical where none is stated; inner joints in line with a
// rack, else with their studs along the pitman axis on the pitman arm's side and its
// mirror image on the other, or vertical without a gear.
func (x *Axle) Joints() *Joints {
	j := &Joints{DragOuter: Joint{Axis: up}}
	for _, s := range Sides {
		j.Inner[s], j.Outer[s] = x.usualInner(s), Joint{Axis: up}
		if a := x.Design().StudAxis[s]; a != (Vec{}) {
			j.Outer[s].Axis = a
		}
	}
	return j
}

// usualInner returns the inner joint of a side as it is usually made.
func (x *Axle) usualInner(s Side) Joint {
	switch g := &x.gear; g.Kind {
	case Rack:
		return Joint{Axis: g.Axis, Inline: true}
	case CentreLink:
		pitman := Left
		if g.Points[pitmanPivot].Y < 0 {
			pitman = Right
		}
		axis := g.PitmanAxis
		if s != pitman && x.beam == nil { // a drag link has one joint
			axis = Right.Mirrored(axis)
		}
		return Joint{Axis: axis}
	}
	return Joint{Axis: up}
}

// JointAngles is how the tie rod stands at its joints and to the steering arm.
type JointAngles struct {
	// Inner and Outer are the misalignments of the two joints, 0 to 90 deg: see
	// [Joints]. DragOuter is that of a solid axle's drag link at the knuckle,
	// the same on both sides, and 0 without one.
	Inner, Outer, DragOuter Angle
	// Transmission is the angle, seen along the steering axis, between the tie
	// rod and the steering arm at the outer ball: 90 deg turns the wheel best, 0
	// and 180 deg not at all.
	Transmission Angle
	// EffortArm is the lever of the tie rod about the steering axis, mm.
	EffortArm float64
}

// arm sets what the steering arm has to do with the tie rod: ball is the rod's outer end,
// rod the vector to there from the other one and l its length, at and dir the steering axis.
// Seen along the axis, arm and rod are what is square to it; all here but the rod's length
// is times the square of dir's.
func (j *JointAngles) arm(ball, rod Vec, l float64, at, dir Vec) {
	arm := r3.Sub(ball, at)
	d2 := r3.Dot(dir, dir)
	d := math.Sqrt(d2)
	turning := math.Abs(r3.Dot(dir, r3.Cross(arm, rod)))
	j.Transmission = Angle(atan2(turning*d, r3.Dot(arm, rod)*d2-r3.Dot(dir, arm)*r3.Dot(dir, rod)))
	j.EffortArm = turning / (l * d)
}

// square returns the part of v square to the unit vector k.
func square(k, v Vec) Vec { return axpy(-r3.Dot(k, v), k, v) }
