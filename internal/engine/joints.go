package engine

import (
	"toewright/internal/study"
	"toewright/solver"
)

// joints returns a car's ball joints with the axes that the study states.
func (c *cars) joints(axle *solver.Axle) *solver.Joints {
	j := axle.Joints()
	rod := c.doc.TieRod
	if rod == nil {
		return j
	}
	for _, side := range solver.Sides {
		setAxis(&j.Inner[side], rod.InnerBall, side)
		setAxis(&j.Outer[side], rod.OuterBall, side)
	}
	return j
}

// setAxis sets the axis of a joint where the study states one, which is that of
// the left side.
func setAxis(j *solver.Joint, b *study.BallJoint, side solver.Side) {
	if b == nil || b.Axis == nil {
		return
	}
	axis := *b.Axis
	if side == solver.Right {
		axis = axis.Mirrored()
	}
	j.Axis = solver.Vec{X: axis[0], Y: axis[1], Z: axis[2]}
}
