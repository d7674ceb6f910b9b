package engine

import (
	"context"
	"math"

	"toewright/internal/study"
	"toewright/solver"
)

// SteerOptions say which cars are steered, how far and at which height.
type SteerOptions struct {
	Candidate string   `json:"candidate,omitzero"` // restricts to one car; "base" is the base car
	Lock      *float64 `json:"lock,omitzero"`      // most input to either side; nil is that of the study
	Step      *float64 `json:"step,omitzero"`      // nil is a twelfth of the lock
	Heave     float64  `json:"heave,omitzero"`
	Roll      float64  `json:"roll,omitzero"`
}

// SteerResult is what [Steer] returns: lengths in the file's units, angles in
// degrees. Inputs are lengths along a rack's axis, or degrees of the pitman arm.
type SteerResult struct {
	Units     study.Units `json:"units"`
	InputUnit string      `json:"inputUnit"` // "mm", "in" or "deg"
	Heave     float64     `json:"heave,omitzero"`
	Roll      float64     `json:"roll,omitzero"`
	Cars      []Steered   `json:"cars"`
}

// Steered is one car's steering.
type Steered struct {
	Candidate string        `json:"candidate"`
	Points    []SteerPoint  `json:"points"`
	Lock      *SteeringLock `json:"lock,omitzero"` // nil where all inputs were reached
}

// SteerPoint is a car at one steering input. Angles are positive to the left, from
// straight ahead; what there is not, or the study states too little for, is none.
type SteerPoint struct {
	Input         float64 `json:"input"`
	Left          Number  `json:"left"`
	Right         Number  `json:"right"`
	ToeOut        Number  `json:"toeOut"`    // on the turn
	Ackermann     Number  `json:"ackermann"` // percent
	TurningCircle Number  `json:"turningCircle"`
	Ratio         Number  `json:"ratio"` // of steering wheel to road wheels, here
}

// SteeringLock says where the steering ends before the inputs asked for.
type SteeringLock struct {
	Low  Number `json:"low"` // none where that side was reached
	High Number `json:"high"`
	Link string `json:"link"`
}

// steerSteps is the number of steps from straight ahead to lock.
const steerSteps = 12

// maxSteerPoints bounds the positions of one car.
const maxSteerPoints = 10_000

// Steer moves the gear of each car from lock to lock, the wheels at one height.
func Steer(ctx context.Context, d *study.Document, o SteerOptions) (*SteerResult, error) {
	s, err := newSweeper(d, d.Window(), "")
	if err != nil {
		return nil, err
	}
	inputs, err := s.steerInputs(&o)
	if err != nil {
		return nil, err
	}
	list, err := s.pick(ctx, o.Candidate)
	if err != nil {
		return nil, err
	}
	out := &SteerResult{Units: d.Units, InputUnit: s.inputUnit(), Heave: o.Heave, Roll: o.Roll}
	for _, car := range list {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		steered, err := s.steered(car, inputs, Attitude{Heave: o.Heave, Roll: o.Roll})
		if err != nil {
			return nil, err
		}
		out.Cars = append(out.Cars, steered)
	}
	return out, nil
}

func (c *cars) inputUnit() string {
	if c.design.Gear.Quantity() == solver.AngleQuantity {
		return "deg"
	}
	return string(c.doc.Units)
}

// steerInputs returns the inputs in the file's units, ascending.
func (s *sweeper) steerInputs(o *SteerOptions) ([]float64, error) {
	if s.doc.Steering == nil || s.design.Gear.Kind == solver.NoGear {
		return nil, wrongf("steering", "is missing: an axle without a gear cannot be steered")
	}
	lock := given(o.Lock, s.doc.Steering.Lock)
	if o.Lock == nil && lock == 0 {
		return nil, wrongf("steering.lock", "is missing: state the most steering input, or give --lock")
	}
	if !(lock >= 0) {
		return nil, wrongf("lock", "%g is not a steering input to either side, want 0 or more", lock)
	}
	step := given(o.Step, lock/steerSteps)
	if o.Step != nil && !(step > 0) {
		return nil, wrongf("step", "%g is not a step, want more than 0", step)
	}
	if lock == 0 {
		return []float64{0}, nil
	}
	if !(lock/step <= maxSteerPoints) {
		return nil, wrongf("step", "%g %s makes more than %d positions to a lock of %g; use a larger one", step, s.inputUnit(), maxSteerPoints, lock)
	}
	inputs, err := solver.Grid(lock, lock, step)
	return inputs, explain(err, "")
}

func (s *sweeper) steered(car car, inputs []float64, a Attitude) (Steered, error) {
	out := Steered{Candidate: car.name}
	at, err := s.attitude(a, car.axle)
	if err != nil {
		return out, err
	}
	in := solver.SteerInput{At: at}
	for _, x := range inputs {
		in.Inputs = append(in.Inputs, s.steer(x))
	}
	var curve solver.SteerCurve
	if err := car.axle.Steer(s.ws, &in, &curve); err != nil {
		return out, explain(err, label(car.name))
	}
	for i := range curve.Points {
		out.Points = append(out.Points, s.steerPoint(car, &curve.Points[i]))
	}
	out.Lock = s.steeringLock(&curve.Reach)
	return out, nil
}

func (s *sweeper) steerPoint(car car, p *solver.SteerPoint) SteerPoint {
	out := SteerPoint{
		Input: s.steerShown(p.Input), Left: Number(p.Wheel[solver.Left].Degrees()), Right: Number(p.Wheel[solver.Right].Degrees()),
		ToeOut: none, Ackermann: none, TurningCircle: none, Ratio: none,
	}
	if g := s.doc.Steering; g.PerTurn != 0 {
		out.Ratio = Number(math.Abs(solver.SteeringRatio(p.MeanRate(), s.steer(g.PerTurn))))
	}
	if p.Input == 0 {
		return out
	}
	turn := p.Turn()
	out.ToeOut = Number(turn.ToeOut().Degrees())
	out.Ackermann = ackermann(car.axle, turn)
	if d, err := car.axle.TurningCircle(turn); err == nil {
		out.TurningCircle = Number(s.doc.Units.FromMillimetres(d))
	}
	return out
}

// steerShown returns a steering input, in mm or radians, as the file has it.
func (c *cars) steerShown(x float64) float64 {
	if c.design.Gear.Quantity() == solver.AngleQuantity {
		return solver.Angle(x).Degrees()
	}
	return c.doc.Units.FromMillimetres(x)
}

// steeringLock returns where the steering ends, nil where it does not.
func (c *cars) steeringLock(r *solver.SteerReach) *SteeringLock {
	l := &SteeringLock{Low: none, High: none}
	if r.Lo.Locked {
		l.Low, l.Link = Number(c.steerShown(r.Lo.Input)), r.Lo.Link
	}
	if r.Hi.Locked {
		l.High, l.Link = Number(c.steerShown(r.Hi.Input)), r.Hi.Link
	}
	if l.Link == "" {
		return nil
	}
	return l
}
