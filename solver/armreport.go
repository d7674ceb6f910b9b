package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// ArmFace is where a steering arm is bolted to its knuckle, in vehicle axes in
// the static position of the design as measured, on its own side of the car.
type ArmFace struct {
	// Normal is square to the face and points from the knuckle to the arm.
	Normal Vec
	// Pattern runs from the first bolt hole to the second. Where it has no length in the
	// face the level direction there stands for it, and forward in a level face.
	Pattern Vec
}

// minPattern is the least length of a pattern in its face, mm, or sine of a direction to the
// normal: what is left of one square to the face is rounding.
const minPattern = 1e-6

// ArmReport is a candidate's steering arm on one side as the shop that forges it
// reads it: where the hole or taper for the outer ball goes, from where it was.
type ArmReport struct {
	Side Side
	// Car is the displacement in mm forward, outboard and up, on the original
	// car standing at static height.
	Car Vec
	// Face is the same displacement along the face's normal, along its bolt
	// pattern, and square to both (normal × pattern on the left, mirrored on the
	// right), in mm; zero where no face is given.
	Face Vec
	// AlongStud is its part along the stud, in mm, positive the way the stud axis
	// points: upward unless stated; AcrossStud is what is left, without sign.
	AlongStud, AcrossStud float64
	// Length is the level distance from the steering axis to the ball, at the
	// height of each ball, mm.
	Length RodChange
	// TieRod is the tie rod between its balls, DragLink a solid axle's.
	TieRod, DragLink RodChange
	// Original is where the arm of the original car stands.
	Original ArmPlace
}

// ArmPlace is where a steering arm stands at static height, in vehicle axes.
type ArmPlace struct {
	Hole Vec // for the ball
	Foot Vec // of the arm: the point of the steering axis at the ball's height
	Axis Vec // the steering axis' direction, of length 1, upward
	Stud Vec // the stud's direction, of length 1
}

// RodChange is a length before and after, in mm.
type RodChange struct{ Before, After float64 }

// Change returns by how much the length grows, mm.
func (c RodChange) Change() float64 { return c.After - c.Before }

// ArmReport returns what a candidate makes of the steering arm of side s against
// the original car; face may be nil. Both must be of one design; a coordinate that
// the car has elsewhere than the file says belongs into both.
func (x *Axle) ArmReport(original *Axle, s Side, face *ArmFace) ArmReport {
	was, now := original.armOf(s), x.armOf(s)
	d := r3.Sub(now.hole, was.hole)
	stud := r3.Unit(was.stud)
	r := ArmReport{
		Side: s, Car: original.inCar(s, d),
		AlongStud: r3.Dot(stud, d), AcrossStud: r3.Norm(square(stud, d)),
		Length:   RodChange{was.length, now.length},
		TieRod:   RodChange{original.TieRodLength(s), x.TieRodLength(s)},
		Original: original.armPlace(s, &was),
	}
	if face != nil {
		r.Face = face.components(s, d)
	}
	if x.beam != nil {
		r.DragLink = RodChange{original.beam.drag.l, x.beam.drag.l}
	}
	return r
}

// armPlace returns where a side's arm stands.
func (x *Axle) armPlace(s Side, a *steeringArm) ArmPlace {
	return ArmPlace{
		Hole: s.Mirrored(a.ball), Foot: s.Mirrored(a.foot), Axis: r3.Unit(s.Mirrored(a.axis)),
		Stud: r3.Unit(s.Mirrored(x.inCar(s, a.stud))),
	}
}

// inCar returns a displacement in a knuckle, as a left one where the design has
// it, as it stands in the axle's static position.
func (x *Axle) inCar(s Side, d Vec) Vec {
	st, _, k := x.knuckle(s)
	return st.u.asLeft(s, k.turn(st.u.asLeft(s, d)))
}

// Axes returns the directions of the face of side s, of length 1 and square to each
// other: its normal, along its bolts, and across them in the face. They are those of
// a left arm, forward, outboard and up.
func (f *ArmFace) Axes(s Side) [3]Vec {
	n := r3.Unit(s.Mirrored(f.Normal))
	for _, p := range []Vec{s.Mirrored(f.Pattern), r3.Cross(up, n), {X: 1}} {
		if p = square(n, p); r3.Norm(p) > minPattern {
			p = r3.Unit(p)
			return [3]Vec{n, p, r3.Cross(n, p)}
		}
	}
	return [3]Vec{n, n, n} // of a normal without direction, which is none
}

// components returns the parts of a displacement of side s, as a left one, in the
// axes of the face.
func (f *ArmFace) components(s Side, d Vec) Vec {
	a := f.Axes(s)
	return Vec{X: r3.Dot(a[0], d), Y: r3.Dot(a[1], d), Z: r3.Dot(a[2], d)}
}

// steeringArm is one side's arm as a left one.
type steeringArm struct {
	hole   Vec     // of the ball, from a point of the knuckle, where that stands in the design
	stud   Vec     // likewise
	ball   Vec     // in the static position, as are foot and axis
	foot   Vec     // of the arm on the steering axis
	axis   Vec     // direction of the steering axis
	length float64 // level, from the steering axis, mm
}

// armOf returns the steering arm of a side.
func (x *Axle) armOf(s Side) steeringArm {
	st, w, f := x.knuckle(s)
	from := w.centre
	if st.u.beam {
		from = w.axis.lower
	}
	var pose wheelPose
	x.staticWheel(s, &pose)
	ball := st.u.asLeft(s, st.pts[w.arm])
	at := pose.axisAtHeight(ball.Z)
	return steeringArm{
		hole:   st.u.asLeft(s, f.back(r3.Sub(st.pts[w.arm], st.pts[from]))),
		stud:   st.u.asLeft(s, st.u.stud(w.arm, x.Design().StudAxis)),
		ball:   ball,
		foot:   at,
		axis:   pose.axisDir,
		length: math.Hypot(ball.X-at.X, ball.Y-at.Y),
	}
}

// asLeft returns a vector of side s, in the unit's frame, as that of a left one.
func (u *unit) asLeft(s Side, v Vec) Vec {
	if u.beam {
		return s.Mirrored(v)
	}
	return v
}

// knuckleTurn is how a knuckle is turned from the design to the static position:
// about its kingpin, if it has one, and with the beam or by itself.
type knuckleTurn struct {
	r   rotation
	pin Vec     // where the beam stands in the design
	h   float64 // tangent of half the turn
}

func (k *knuckleTurn) turn(v Vec) Vec { return k.r.turn(about(k.pin, v, k.h)) }
func (k *knuckleTurn) back(v Vec) Vec { return about(k.pin, k.r.back(v), -k.h) }

// knuckle returns the unit and the wheel of a side and how its knuckle is turned.
func (x *Axle) knuckle(s Side) (*staticUnit, *wheelSpec, knuckleTurn) {
	st, _ := x.unitOf(s)
	w := &st.u.wheels[int(s)%len(st.u.wheels)]
	k := knuckleTurn{r: cayley(Vec{X: st.q[0], Y: st.q[1], Z: st.q[2]})}
	if st.u.beam {
		k.pin = r3.Unit(k.r.back(r3.Sub(st.pts[w.axis.upper], st.pts[w.axis.lower])))
		k.h = st.q[6+int(s)]
	}
	return st, w, k
}
