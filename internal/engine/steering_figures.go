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

// steeringFigures sets what is said of a car's steering with the wheel of a side as
// the inner one.
func (s *sweeper) steeringFigures(axle *solver.Axle, side solver.Side, f *SteeringFigures) {
	if p, err := axle.SteerFor(s.ws, side, toInside(side, solver.Deg(innerAngle)), solver.Attitude{}); err == nil {
		turn := p.Turn()
		f.ToeOutOnTurns = degrees(turn.ToeOut().Radians())
		if a, err := axle.Ackermann(turn); err == nil {
			f.Ackermann = Number(a)
		}
	}
	gear := s.doc.Steering
	if gear == nil {
		return
	}
	if p, ok := s.steered(axle, 0); ok && gear.PerTurn > 0 {
		f.SteeringRatio = Number(math.Abs(solver.SteeringRatio(p.MeanRate(), s.steer(gear.PerTurn))))
	}
	if gear.Lock > 0 {
		f.TurningCircle = s.turningCircle(axle, side)
	}
}

// toInside gives an angle the sign with which the wheel of a side turns inward.
func toInside(side solver.Side, a solver.Angle) solver.Angle {
	if side == solver.Right {
		return -a
	}
	return a
}

// turningCircle returns that at the lock to which the wheel of a side is the inner
// one.
func (s *sweeper) turningCircle(axle *solver.Axle, side solver.Side) Number {
	lock := s.steer(s.doc.Steering.Lock)
	for _, input := range [2]float64{lock, -lock} {
		p, ok := s.steered(axle, input)
		if !ok || p.Turn().ToLeft != (side == solver.Left) {
			continue
		}
		if d, err := axle.TurningCircle(p.Turn()); err == nil {
			return Number(s.doc.Units.FromMillimetres(d))
		}
	}
	return none
}

// steered returns the axle at one steering input; false where it cannot be brought
// there.
func (s *sweeper) steered(axle *solver.Axle, input float64) (solver.SteerPoint, bool) {
	var c solver.SteerCurve
	if err := axle.Steer(s.ws, &solver.SteerInput{Inputs: []float64{input}}, &c); err != nil || len(c.Points) != 1 {
		return solver.SteerPoint{}, false
	}
	return c.Points[0], true
}
