package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// movement is how a knuckle moves along a path, as a left one: first and second
// derivatives by the path parameter, in V. They come from the equations of the
// pose themselves, not from neighbouring poses.
type movement struct {
	omega, v Vec // angular velocity, and velocity of the wheel centre
	alpha    Vec // angular acceleration
}

// velocity returns that of the knuckle's point at r from the wheel centre.
func (m *movement) velocity(r Vec) Vec { return r3.Add(m.v, r3.Cross(m.omega, r)) }

// mirrored returns the movement seen in the car's centre plane where s is the
// right side. Turns are axial: their y stays and x and z change sign.
func (m movement) mirrored(s Side) movement {
	if s == Left {
		return m
	}
	m.v = s.Mirrored(m.v)
	m.omega, m.alpha = r3.Scale(-1, s.Mirrored(m.omega)), r3.Scale(-1, s.Mirrored(m.alpha))
	return m
}

// centripetal returns the acceleration ω×(ω×r) of a point at r that turns at ω.
func centripetal(omega, r Vec) Vec { return r3.Cross(omega, r3.Cross(omega, r)) }

// toeRate returns the derivative of the toe of the unit spin axis e by the path
// parameter.
func (m *movement) toeRate(e Vec) float64 {
	return r3.Dot(toeSlope(e), r3.Cross(m.omega, e))
}

// angleRates sets the derivatives of the angles of the unit spin axis e, and the second
// one of its toe, along the same path when it is run through k times as fast.
func (m *movement) angleRates(e Vec, k float64, out *Instant) {
	d := r3.Cross(m.omega, e)
	dd := r3.Add(r3.Cross(m.alpha, e), r3.Cross(m.omega, d))
	level := e.X*e.X + e.Y*e.Y
	n := 1 / level
	rate := (e.Y*d.X - e.X*d.Y) * n
	out.ToeRate = k * rate
	out.ToeCurvature = k * k * ((e.Y*dd.X-e.X*dd.Y)*n - 2*(e.X*d.X+e.Y*d.Y)*n*rate)
	out.CamberRate = -k * d.Z / math.Sqrt(level)
}
