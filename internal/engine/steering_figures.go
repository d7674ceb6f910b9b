package engine

import (
	"math"

	"toewright/solver"
)

// SteeringFigures are the numbers that are said of a car's steering at its static
// height. They are none without a steering gear, and where the study does not
// state what they need: the wheelbase, steering.perTurn, steering.lock.
type SteeringFigures struct {
	// ToeOutOnTurns and Ackermann (percent) are those with this wheel as the inner
	// one, 20 degrees from straight ahead.
	ToeOutOnTurns Number `json:"toeOutOnTurns"`
	Ackermann     Number `json:"ackermann"`
	SteeringRatio Number `json:"steeringRatio"` // straight ahead, of steering wheel to road wheels
	TurningCircle Number `json:"turningCircle"` // kerb to kerb with this wheel as the inner one
}

// innerAngle is the inner wheel's angle at which toe-out on turns is judged: common
// practice.
const innerAngle = 20.0

// steeringFigures returns what is said of a car's steering with the wheel of a side
// as the inner one.
func (c *cars) steeringFigures(axle *solver.Axle, ws *solver.Workspace, side solver.Side) SteeringFigures {
	f := SteeringFigures{none, none, c.ratio(axle, ws), c.turningCircle(axle, ws, side)}
	if turn, ok := turnOf(axle, ws, side); ok {
		f.ToeOutOnTurns = degrees(turn.ToeOut().Radians())
		f.Ackermann = ackermann(axle, turn)
	}
	return f
}

// turnOf returns the turn with the wheel of a side at [innerAngle]; false where the
// steering locks before, or there is none.
func turnOf(axle *solver.Axle, ws *solver.Workspace, side solver.Side) (solver.Turn, bool) {
	angle := solver.Deg(innerAngle)
	if side == solver.Right {
		angle = -angle
	}
	p, err := axle.SteerFor(ws, side, angle, solver.Attitude{})
	return p.Turn(), err == nil
}

// ackermann returns the percentage of a turn, none where no wheelbase is stated.
func ackermann(axle *solver.Axle, turn solver.Turn) Number {
	percent, err := axle.Ackermann(turn)
	if err != nil {
		return none
	}
	return Number(percent)
}

// ratio returns that of the steering wheel to the mean of the road wheels, straight
// ahead.
func (c *cars) ratio(axle *solver.Axle, ws *solver.Workspace) Number {
	if c.doc.Steering == nil || c.doc.Steering.PerTurn == 0 {
		return none
	}
	p, ok := steered(axle, ws, 0)
	if !ok {
		return none
	}
	return Number(math.Abs(solver.SteeringRatio(p.MeanRate(), c.steer(c.doc.Steering.PerTurn))))
}

// turningCircle returns that at the lock at which the wheel of a side is the inner
// one.
func (c *cars) turningCircle(axle *solver.Axle, ws *solver.Workspace, side solver.Side) Number {
	if c.doc.Steering == nil || c.doc.Steering.Lock == 0 {
		return none
	}
	lock := c.steer(c.doc.Steering.Lock)
	for _, input := range [2]float64{lock, -lock} {
		p, ok := steered(axle, ws, input)
		if !ok || p.Turn().ToLeft != (side == solver.Left) {
			continue
		}
		if d, err := axle.TurningCircle(p.Turn()); err == nil {
			return Number(c.doc.Units.FromMillimetres(d))
		}
	}
	return none
}

// steered returns the axle at one steering input; false where it cannot be brought
// there.
func steered(axle *solver.Axle, ws *solver.Workspace, input float64) (solver.SteerPoint, bool) {
	var c solver.SteerCurve
	if err := axle.Steer(ws, &solver.SteerInput{Inputs: []float64{input}}, &c); err != nil || len(c.Points) != 1 {
		return solver.SteerPoint{}, false
	}
	return c.Points[0], true
}
