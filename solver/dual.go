package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// dual is a number v and its rate d along one direction of change: forward
// differentiation, exact to rounding. What is assembled once for each candidate
// is written in dual numbers, so that a residual and its derivative by a pose, a
// coordinate or a setpoint come from one and the same formula.
type dual struct{ v, d float64 }

// dvec is a point or direction with its rate.
type dvec struct{ v, d Vec }

func fixed(v Vec) dvec          { return dvec{v: v} }
func constant(v float64) dual   { return dual{v: v} }
func (a dual) plus(b dual) dual { return dual{a.v + b.v, a.d + b.d} }
func (a dual) less(b dual) dual { return dual{a.v - b.v, a.d - b.d} }
func (a dual) times(b dual) dual {
	return dual{a.v * b.v, a.d*b.v + a.v*b.d}
}
func (a dual) over(b dual) dual {
	q := a.v / b.v
	return dual{q, (a.d - q*b.d) / b.v}
}
func (a dual) scaled(k float64) dual { return dual{k * a.v, k * a.d} }

func (a dual) sqrt() dual {
	r := math.Sqrt(a.v)
	return dual{r, a.d / (2 * r)}
}

func (a dual) sin() dual { return dual{math.Sin(a.v), a.d * math.Cos(a.v)} }
func (a dual) cos() dual { return dual{math.Cos(a.v), -a.d * math.Sin(a.v)} }

// datan2 returns the angle of the point (x, y) from the x axis.
func datan2(y, x dual) dual {
	n := x.v*x.v + y.v*y.v
	return dual{math.Atan2(y.v, x.v), (x.v*y.d - y.v*x.d) / n}
}

func (a dvec) plus(b dvec) dvec { return dvec{r3.Add(a.v, b.v), r3.Add(a.d, b.d)} }
func (a dvec) less(b dvec) dvec { return dvec{r3.Sub(a.v, b.v), r3.Sub(a.d, b.d)} }

func (a dvec) times(k dual) dvec {
	return dvec{r3.Scale(k.v, a.v), r3.Add(r3.Scale(k.d, a.v), r3.Scale(k.v, a.d))}
}

func (a dvec) dot(b dvec) dual {
	return dual{r3.Dot(a.v, b.v), r3.Dot(a.d, b.v) + r3.Dot(a.v, b.d)}
}

func (a dvec) cross(b dvec) dvec {
	return dvec{r3.Cross(a.v, b.v), r3.Add(r3.Cross(a.d, b.v), r3.Cross(a.v, b.d))}
}

func (a dvec) norm() dual { return a.dot(a).sqrt() }
func (a dvec) unit() dvec { return a.times(constant(1).over(a.norm())) }
func (a dvec) x() dual    { return dual{a.v.X, a.d.X} }
func (a dvec) y() dual    { return dual{a.v.Y, a.d.Y} }
func (a dvec) z() dual    { return dual{a.v.Z, a.d.Z} }

// turned returns a turned by the constant rotation r.
func (a dvec) turned(r *rotation) dvec { return dvec{r.turn(a.v), r.turn(a.d)} }

// turnedAbout returns a turned about the unit axis k by the angle whose half has
// the constant tangent h.
func (a dvec) turnedAbout(k dvec, h float64) dvec {
	m := 1 / (1 + h*h)
	c, s := (1-h*h)*m, 2*h*m
	return a.times(constant(c)).plus(k.cross(a).times(constant(s))).plus(k.times(k.dot(a).scaled(1 - c)))
}

// levelUnit returns the unit vector along the level part of a.
func (a dvec) levelUnit() dvec {
	a.v.Z, a.d.Z = 0, 0
	return a.unit()
}
