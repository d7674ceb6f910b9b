package scene

import (
	"math"

	"toewright/app/model"
	"toewright/solver"
)

// position moves the selected car, and the reference for comparison, to where the
// view has it. Where it cannot be moved there the last position stays.
func (s *Stage) position() error {
	base := s.cars.Base()
	s.car = s.desk.Selected()
	if s.cars.Err != nil || base == nil || base.Err != nil {
		s.car = nil
		return unsolved(s.cars)
	}
	var trouble error
	if s.car.Err != nil {
		trouble, s.car = s.car.Err, base
	}
	s.setRig(base.Axle.Design())
	s.travel = within(s.car, s.desk.View.Travel)
	steer := s.desk.View.Steer
	if err := base.Axle.Place(s.ws, [2]float64{}, 0, &s.home); err != nil {
		s.car = nil
		return err
	}
	if err := s.car.Axle.Place(s.ws, [2]float64{}, steer, &s.static); err != nil {
		trouble, steer = err, 0
		_ = s.car.Axle.Place(s.ws, [2]float64{}, 0, &s.static) // where it was assembled
	}
	if err := s.car.Axle.Place(s.ws, s.travel, steer, &s.placed); err != nil {
		trouble = err
	}
	if err := s.cars.At(s.reference()).Axle.Place(s.ws, s.travel, steer, &s.ghost); err != nil {
		s.ghost.Side[0] = s.ghost.Side[0][:0] // not drawn
	}
	s.sweep(steer)
	return trouble
}

// unsolved returns why not even the base car can be drawn.
func unsolved(c *model.Cars) error {
	if c.Err == nil && c.Base() != nil {
		return c.Base().Err
	}
	return c.Err
}

// setRig makes the rig of a design, unless it is there already.
func (s *Stage) setRig(d *solver.Design) {
	if s.rigOf == nil || s.rigOf.Kind != d.Kind || s.rigOf.Gear.Kind != d.Gear.Kind || s.rigOf.Gear.HasIdler != d.Gear.HasIdler {
		s.rig = newRig(d)
	}
	s.rigOf = d
}

// within returns travels that a car reaches.
func within(car *model.Car, travel [2]float64) [2]float64 {
	for _, side := range solver.Sides {
		ps := car.Curves[side].Positions
		if len(ps) > 0 {
			travel[side] = math.Max(ps[0].Travel, math.Min(travel[side], ps[len(ps)-1].Travel))
		}
	}
	return travel
}

// sweep takes the selected car's curves anew where they depend on the view: with the
// wheels steered, and for an axle whose one wheel moves the other.
func (s *Stage) sweep(steer float64) {
	for i := range s.moved {
		s.moved[i].Positions = s.moved[i].Positions[:0]
	}
	motion := s.desk.View.Motion
	if steer == 0 && (!s.car.Axle.Solid() || motion == solver.BothWheels) {
		return
	}
	if !s.car.Axle.Solid() {
		motion = solver.BothWheels // a corner moves by itself
	}
	in := solver.SweepInput{Travels: s.cars.Travels, Motion: motion, From: solver.Attitude{Steer: steer}}
	if err := s.car.Axle.Sweep(s.ws, &in, &s.moved); err != nil {
		for i := range s.moved {
			s.moved[i].Positions = s.moved[i].Positions[:0]
		}
	}
}

// swept says whether the selected car's curve of a side is one that [Stage.sweep]
// took, and the travel of that wheel by the travel of the sweep.
func (s *Stage) swept(side solver.Side) (rate float64, ok bool) {
	if len(s.moved[side].Positions) == 0 {
		return 1, false
	}
	switch m := s.desk.View.Motion; {
	case !s.car.Axle.Solid() || m == solver.BothWheels:
		return 1, true
	case m == solver.RollMotion && side == solver.Right:
		return -1, true
	case m == solver.LeftWheel && side == solver.Right, m == solver.RightWheel && side == solver.Left:
		return 1, false // that wheel keeps its height
	}
	return 1, true
}

// toeNow returns the toe change of a wheel as drawn, from that at ride height with
// the same steering.
func (s *Stage) toeNow(side solver.Side) solver.Angle {
	return s.placed.Wheel[side].Toe - s.static.Wheel[side].Toe
}

// ToeChange returns the toe change of a wheel as drawn, from that at ride height with
// the same steering; 0 where nothing can be drawn.
func (s *Stage) ToeChange(side solver.Side) solver.Angle {
	if s.car == nil {
		return 0
	}
	return s.toeNow(side)
}
