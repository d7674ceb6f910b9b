package engine

import (
	"fmt"
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
	f := SteeringFigures{none, none, c.ratio(axle, ws), none}
	if turn, err := turnOf(axle, ws, side, solver.Attitude{}); err == nil {
		f.ToeOutOnTurns = degrees(turn.ToeOut().Radians())
		f.Ackermann = ackermann(axle, turn)
	}
	if c.doc.Steering != nil && c.doc.Steering.Lock != 0 {
		if d, err := c.turningCircle(axle, ws, side, solver.Attitude{}); err == nil {
			f.TurningCircle = Number(d)
		}
	}
	return f
}

// turned returns the axle with the wheel of a side, the inner one, at [innerAngle], at the
// heave and roll of an attitude. It is an error where the steering locks before, or there is
// none.
func turned(axle *solver.Axle, ws *solver.Workspace, side solver.Side, at solver.Attitude) (solver.SteerPoint, error) {
	angle := solver.Deg(innerAngle)
	if side == solver.Right {
		angle = -angle
	}
	return axle.SteerFor(ws, side, angle, at)
}

// turnOf returns the turn of [turned].
func turnOf(axle *solver.Axle, ws *solver.Workspace, side solver.Side, at solver.Attitude) (solver.Turn, error) {
	p, err := turned(axle, ws, side, at)
	return p.Turn(), err
}

// turnRates returns how an axle that is [turned] changes with the parameters of some tangents
// of it, the inner wheel held; false where nothing says.
func turnRates(axle *solver.Axle, ws *solver.Workspace, side solver.Side, p *solver.SteerPoint, at solver.Attitude, by *solver.Tangents) ([]solver.SteerRate, bool) {
	at.Steer = p.Input
	rates, ok := axle.SteerRates(ws, at, by)
	if ok {
		p.HoldWheel(side, rates)
	}
	return rates, ok
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
	ratio, err := c.ratioAt(axle, ws, solver.Attitude{})
	if err != nil {
		return none
	}
	return Number(ratio)
}

// ratioAt returns the same in an attitude, at its own steering input. The study states
// steering.perTurn.
func (c *cars) ratioAt(axle *solver.Axle, ws *solver.Workspace, at solver.Attitude) (float64, error) {
	p, err := steered(axle, ws, at.Steer, at)
	if err != nil {
		return 0, err
	}
	return math.Abs(solver.SteeringRatio(p.MeanRate(), c.steer(c.doc.Steering.PerTurn))), nil
}

// turningCircle returns that of [cars.locked] in the file's unit.
func (c *cars) turningCircle(axle *solver.Axle, ws *solver.Workspace, side solver.Side, at solver.Attitude) (float64, error) {
	p, err := c.locked(axle, ws, side, at)
	if err != nil {
		return 0, err
	}
	d, err := axle.TurningCircle(p.Turn())
	return c.length(d), err
}

// locked returns the axle at the lock at which the wheel of a side is the inner one, at the
// heave and roll of an attitude. The study states steering.lock.
func (c *cars) locked(axle *solver.Axle, ws *solver.Workspace, side solver.Side, at solver.Attitude) (solver.SteerPoint, error) {
	lock := c.steer(c.doc.Steering.Lock)
	var reason error
	for _, input := range [2]float64{lock, -lock} {
		p, err := steered(axle, ws, input, at)
		if err != nil {
			reason = err
			continue
		}
		if p.Turn().ToLeft == (side == solver.Left) {
			return p, nil
		}
	}
	if reason == nil {
		reason = fmt.Errorf("the %s wheel is the inner one at neither lock", side)
	}
	return solver.SteerPoint{}, reason
}

// steered returns the axle at one steering input, at the heave and roll of an attitude.
func steered(axle *solver.Axle, ws *solver.Workspace, input float64, at solver.Attitude) (solver.SteerPoint, error) {
	var c solver.SteerCurve
	if err := axle.Steer(ws, &solver.SteerInput{Inputs: []float64{input}, At: at}, &c); err != nil {
		return solver.SteerPoint{}, err
	}
	if len(c.Points) != 1 {
		end := c.Reach.Hi
		if input < 0 {
			end = c.Reach.Lo
		}
		return solver.SteerPoint{}, fmt.Errorf("the steering ends before full lock: %s", end.Link)
	}
	return c.Points[0], nil
}
