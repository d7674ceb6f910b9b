package engine

import (
	"context"

	"toewright/internal/study"
	"toewright/solver"
)

// AxleOptions say which cars are looked at.
type AxleOptions struct {
	Candidate string   `json:"candidate,omitzero"` // restricts to one car; "base" is the base car
	Speed     *float64 `json:"speed,omitzero"`     // km/h of the drag; nil is [DefaultSpeed]
	Distance  *float64 `json:"distance,omitzero"`  // m over which drift is taken; nil is [DefaultDistance]
}

// Usual conditions of the estimates.
const (
	DefaultSpeed    = 100.0 // km/h
	DefaultDistance = 100.0 // m
)

// AxleResult is what [Axle] returns: what both wheels of an axle do together, at
// static height.
type AxleResult struct {
	Units    study.Units `json:"units"`
	Speed    float64     `json:"speed"`    // km/h
	Distance float64     `json:"distance"` // m
	Cars     []AxleCar   `json:"cars"`
}

// AxleCar is one car's axle. Scrub, drag and drift are estimates.
type AxleCar struct {
	Candidate string `json:"candidate"`
	// RollSteer is the mean steer by body roll, degrees per degree; positive
	// steers to the left while the left side of the body rises.
	RollSteer Number `json:"rollSteer"`
	// AxleSteer is the mean steer by one wheel's bump, the other held, in degrees
	// per unit of length, positive to the left.
	AxleSteer BySide `json:"axleSteer"`
	// RollCentre is the kinematic roll centre's height above the ground.
	RollCentre Number `json:"rollCentreHeight"`

	// Scrub is an estimate: how far each tyre is dragged sideways by its static
	// toe, in metres per kilometre.
	Scrub BySide `json:"scrub"`
	// Drag is an estimate: the power that static toe takes at the speed, in
	// watts; none without a stated cornering stiffness.
	Drag Number `json:"drag"`
	// Drift is an estimate: how far to the left the car leaves its line over the
	// distance with one wheel at the end of its bump, the other held; a length.
	Drift BySide `json:"drift"`
}

// BySide is a number for the left wheel and one for the right.
type BySide struct {
	Left  Number `json:"left"`
	Right Number `json:"right"`
}

func (b *BySide) set(s solver.Side, v Number) {
	if s == solver.Left {
		b.Left = v
		return
	}
	b.Right = v
}

// Axle says what both wheels of the base car and of each candidate do together.
func Axle(ctx context.Context, d *study.Document, o AxleOptions) (*AxleResult, error) {
	s, err := newSweeper(d, d.SearchWindow(), "")
	if err != nil {
		return nil, err
	}
	out := &AxleResult{Units: d.Units, Speed: given(o.Speed, DefaultSpeed), Distance: given(o.Distance, DefaultDistance)}
	if !(out.Speed >= 0) {
		return nil, wrongf("speed", "%g km/h is none, want 0 or more", out.Speed)
	}
	if !(out.Distance >= 0) {
		return nil, wrongf("distance", "%g m is none, want 0 or more", out.Distance)
	}
	list, err := s.pick(ctx, o.Candidate)
	if err != nil {
		return nil, err
	}
	for _, car := range list {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		one, err := s.axleCar(car, out)
		if err != nil {
			return nil, err
		}
		out.Cars = append(out.Cars, one)
	}
	return out, nil
}

func (s *sweeper) axleCar(car car, o *AxleResult) (AxleCar, error) {
	out := AxleCar{Candidate: car.name, Drag: none}
	roll, err := s.together(car, solver.RollMotion, 0)
	if err != nil {
		return out, err
	}
	left, right := &roll[solver.Left], &roll[solver.Right]
	half := (car.axle.HalfTrack(solver.Left) + car.axle.HalfTrack(solver.Right)) / 2
	out.RollSteer = Number(solver.RollSteer(&left.Instant, &right.Instant, half))
	both, err := s.together(car, solver.BothWheels, 0)
	if err != nil {
		return out, err
	}
	centre := solver.NewRollCentre(&both[solver.Left].Instant, &both[solver.Right].Instant)
	out.RollCentre = Number(s.doc.Units.FromMillimetres(centre.Height))
	s.setToeEstimates(&out, both, o)
	return out, s.setOneWheel(car, &out, o)
}

// setToeEstimates sets what static toe costs.
func (s *sweeper) setToeEstimates(out *AxleCar, at [2]solver.Position, o *AxleResult) {
	for _, side := range solver.Sides {
		out.Scrub.set(side, Number(solver.Scrub(at[side].Toe, 1000)))
	}
	if c := s.doc.Vehicle.CorneringStiffness; c > 0 {
		perRadian := c / solver.Deg(1).Radians()
		out.Drag = Number(solver.ToeDrag([2]solver.Angle{at[solver.Left].Toe, at[solver.Right].Toe}, perRadian, o.Speed/3.6))
	}
}

// setOneWheel sets what one wheel's bump does to the axle's steer.
func (s *sweeper) setOneWheel(car car, out *AxleCar, o *AxleResult) error {
	unit := s.doc.Units.Millimetres(1)
	top := s.grid.mm[len(s.grid.mm)-1]
	for side, motion := range map[solver.Side]solver.Motion{solver.Left: solver.LeftWheel, solver.Right: solver.RightWheel} {
		home, err := s.together(car, motion, 0)
		if err != nil {
			return err
		}
		out.AxleSteer.set(side, degrees(solver.AxleSteerRate(&home[solver.Left].Instant, &home[solver.Right].Instant)*unit))
		out.Drift.set(side, s.drift(car, motion, top, o))
	}
	return nil
}

// drift returns the drift with one wheel at the top of its travel; none where it
// is not reached or no wheelbase is stated.
func (s *sweeper) drift(car car, motion solver.Motion, top float64, o *AxleResult) Number {
	wheelbase := s.doc.Units.Millimetres(s.doc.Vehicle.Wheelbase)
	at, err := s.together(car, motion, top)
	if err != nil || wheelbase == 0 {
		return none
	}
	steer := solver.MeanSteer([2]solver.Angle{at[solver.Left].Toe, at[solver.Right].Toe})
	return Number(s.doc.Units.FromMillimetres(solver.Drift(steer, wheelbase, 1000*o.Distance)))
}

// together returns both wheels at one travel of a motion.
func (s *sweeper) together(car car, m solver.Motion, travel float64) (out [2]solver.Position, err error) {
	travels := []float64{travel}
	in := solver.SweepInput{Travels: travels, Motion: m, Ground: true, Instant: true}
	if err := car.axle.Sweep(s.ws, &in, &s.curves); err != nil {
		return out, explain(err, label(car.name))
	}
	for _, side := range solver.Sides {
		if len(s.curves[side].Positions) != 1 {
			e := wrongf("travel", "%g %s is not reached: %s ends it", s.doc.Units.FromMillimetres(travel), s.doc.Units, s.curves[side].Reach.Link())
			e.Fault, e.Car = Unsolvable, label(car.name)
			return out, e
		}
		out[side] = s.curves[side].Positions[0]
	}
	return out, nil
}
