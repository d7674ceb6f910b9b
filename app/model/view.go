package model

import (
	"toewright/internal/plot"
	"toewright/solver"
)

// View is what the reader looks at. It is no part of the study: nothing of it is
// saved or undone.
type View struct {
	// Car is the index of the selected car, which the sheet draws and a drag
	// changes; Yardstick that of the car that differences are taken from. 0 is the
	// base car.
	Car, Yardstick int

	// Travel is where the two wheels stand, mm from ride height, bump positive.
	Travel [2]float64
	// Motion says how the wheels move together when one is lifted.
	Motion solver.Motion
	// Side is the wheel whose curve a narrow sheet shows, where the two differ.
	Side solver.Side
	// Steer is the steering input in mm, or radians of a pitman arm.
	Steer float64

	// Face is the view of the car. Yaw and Pitch are those of [plot.Orbit], in radians.
	Face       Face
	Yaw, Pitch float64

	// Alone leaves the curves of all but the reference and the selected car out.
	Alone bool
	// Zoomed fits the toe scale to the selected car's curve; of others it shows what
	// is in reach.
	Zoomed bool
	// Instant shows instant centres and the roll centre.
	Instant bool
	// Load is the load case whose forces are drawn, counted from 1; 0 draws none.
	Load int
	// Drawing turns a pointer on the charts into a pencil for the target.
	Drawing bool

	// Point is the hardpoint that is pointed out, by its key such as
	// "lowerBallJoint"; empty for none. PointSide is its side.
	Point     string
	PointSide solver.Side
	// Picked is the hardpoint whose cell is picked, which is pointed out while no other is.
	Picked     string
	PickedSide solver.Side

	// Best is the best car so far of a search that runs; nil of none.
	Best *Car

	// Bands are what tolerances spread, or a fit leaves open, about curves.
	Bands []Band
}

// Face is a view of the car. A narrow sheet shows that one alone. A wide one shows all
// of them but [OrbitFace], which takes the place of plan and side view there.
type Face uint8

// The faces.
const (
	FrontFace  Face = iota // front elevation, from behind
	PlanFace               // from above, forward up
	SideFace               // from the left
	DetailFace             // the left steering arm, enlarged
	OrbitFace              // from any side
)

// PointOut points a hardpoint out, or with "" the one whose cell is picked.
func (v *View) PointOut(name string, side solver.Side) (changed bool) {
	if name == "" {
		name, side = v.Picked, v.PickedSide
	}
	changed = name != v.Point || side != v.PointSide
	v.Point, v.PointSide = name, side
	return changed
}

// OtherSide has a narrow sheet show the curve of the other wheel.
func (v *View) OtherSide() { v.Side = solver.Right - v.Side }

// Turn shows the car from any side, or no longer.
func (v *View) Turn() {
	if v.Face == OrbitFace {
		v.Face = FrontFace
		return
	}
	v.Face = OrbitFace
}

// Band is the area between two toe curves of a side.
type Band struct {
	Side solver.Side
	Car  int // whose look the band takes
	// Travel is in mm, ascending; Low and High are toe changes from that at travel
	// 0, in radians.
	Travel, Low, High []float64
}

// usualYaw and usualPitch are the orbit view's first angles: from behind, a little
// from the right and from above.
const (
	usualYaw   = 0.55
	usualPitch = 0.4
)

// NewView returns the view of a study that has just been opened.
func NewView() View { return View{Yaw: usualYaw, Pitch: usualPitch} }

// View3 returns the direction of the orbit view.
func (v *View) View3() plot.View { return plot.Orbit(v.Yaw, v.Pitch) }

// Lift sets the travel of a wheel, in mm, and moves the other as the motion has it.
func (v *View) Lift(s solver.Side, travel float64) {
	v.Travel[s] = travel
	other := solver.Right - s
	switch v.Motion {
	case solver.BothWheels:
		v.Travel[other] = travel
	case solver.RollMotion:
		v.Travel[other] = -travel
	}
}

// Move sets how the wheels move together, from where the left one stands.
func (v *View) Move(m solver.Motion) {
	v.Motion = m
	v.Lift(solver.Left, v.Travel[solver.Left])
}

// Level sets both wheels to ride height and the steering straight ahead.
func (v *View) Level() { v.Travel, v.Steer = [2]float64{}, 0 }
