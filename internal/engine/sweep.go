package engine

import (
	"context"

	"toewright/internal/study"
	"toewright/solver"
)

// SweepOptions say which cars are moved, and how. The zero value moves both wheels
// of every car, straight ahead.
type SweepOptions struct {
	// Candidate restricts the sweep to one car; "base" is the base car.
	Candidate string `json:"candidate,omitzero"`
	// Motion is "both" (where empty), "left", "right" or "roll".
	Motion string `json:"motion,omitzero"`
	// TravelAt is where travel counts: "wheel-centre" (where empty) or "contact", the
	// lowest point of the wheel's plane at the tyre's radius.
	TravelAt string `json:"travelAt,omitzero"`
	Attitude
}

// maxSwept is the most positions of one sweep over all cars and sides. They fill
// some tens of megabytes.
const maxSwept = 200_000

// Sweep moves the base car and each candidate, in their order, through the study's
// window of travel and returns the wheel's position along it, left then right. A
// linkage that locks within the window gives the positions it reaches and says
// where it ends; one that cannot even be assembled is an error.
func Sweep(ctx context.Context, d *study.Document, o SweepOptions) (*SweepResult, error) {
	s, err := newSweeper(d, d.Window(), o.Motion)
	if err != nil {
		return nil, err
	}
	if s.contact, err = atContact(o.TravelAt); err != nil {
		return nil, err
	}
	list, err := s.pick(ctx, o.Candidate)
	if err != nil {
		return nil, err
	}
	if n := 2 * len(list) * len(s.grid.mm); n > maxSwept {
		return nil, wrongf("travel.step", "%g makes %d positions over all cars, want at most %d; use a larger step or ask for one candidate", s.window.Step, n, maxSwept)
	}
	out := &SweepResult{Units: d.Units}
	for _, car := range list {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if err := s.move(car, o.Attitude); err != nil {
			return nil, err
		}
		for _, side := range solver.Sides {
			out.Sweeps = append(out.Sweeps, s.result(car, side, o.Attitude))
		}
	}
	return out, nil
}

// sweeper moves the cars of a study through one window.
type sweeper struct {
	*cars
	window study.Travel
	grid   grid
	motion solver.Motion
	// contact counts travel at the tyre's contact, not at the wheel centre.
	contact bool
	ws      *solver.Workspace
	curves  [2]solver.Curve // of the car moved last
}

func newSweeper(d *study.Document, w study.Travel, motion string) (*sweeper, error) {
	c, err := newCars(d)
	if err != nil {
		return nil, err
	}
	s := &sweeper{cars: c, window: w, ws: solver.NewWorkspace()}
	if s.grid, err = newGrid(w, d.Units); err != nil {
		return nil, err
	}
	if motion != "" {
		s.motion, err = solver.ParseMotion(motion)
	}
	return s, explain(err, "")
}

// move moves a car through the window.
func (s *sweeper) move(car car, a Attitude) error {
	from, err := s.attitude(a, car.axle)
	if err != nil {
		return err
	}
	in := solver.SweepInput{
		Travels: s.grid.mm, Motion: s.motion, From: from,
		Ground: true, Instant: true, Joints: s.joints(car.axle),
	}
	sweep := car.axle.Sweep
	if s.contact {
		sweep = car.axle.SweepAtContact
	}
	return explain(sweep(s.ws, &in, &s.curves), label(car.name))
}

// contactTravel is the name of travel that counts at the tyre's contact.
const contactTravel = "contact"

// atContact reports whether travel counts at the tyre's contact.
func atContact(travelAt string) (bool, error) {
	switch travelAt {
	case "", "wheel-centre":
		return false, nil
	case contactTravel:
		return true, nil
	}
	return false, wrongf("travelAt", "is %q; use wheel-centre or contact", travelAt)
}
