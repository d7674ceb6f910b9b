package engine

import (
	"toewright/internal/study"
	"toewright/solver"
)

// joints returns a car's ball joints with the axes that the study states.
func (c *cars) joints(axle *solver.Axle) *solver.Joints {
	j := axle.Joints()
	for _, side := range solver.Sides {
		inner := side
		if axle.Solid() {
			inner = solver.Left // a drag link's joint is of no side
		}
		setAxis(&j.Inner[side], c.doc.InnerBall(), inner)
		setAxis(&j.Outer[side], c.doc.OuterBall(), side)
	}
	setAxis(&j.DragOuter, c.doc.DragOuterBall(), solver.Left)
	return j
}

// setAxis sets the axis of a joint where the study states one, which is that of
// the left side.
func setAxis(j *solver.Joint, b *study.BallJoint, side solver.Side) {
	if b != nil && b.Axis != nil {
		j.Axis = mirroredAxis(*b.Axis, side)
	}
}
