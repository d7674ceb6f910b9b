package engine

import (
	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// limitCar is a car in a set-up in which it has to hold the limits; err says why there is
// none.
type limitCar struct {
	scenario string
	axle     *solver.Axle
	from     solver.Attitude
	err      error
}

// limitCars returns the car with changes in each set-up of the study's search, which has
// the last word on what both set, or as it stands where there are none.
func (s *sweeper) limitCars(ups []setUp, changes []solver.Change, hold solver.Hold) (out []limitCar) {
	if len(ups) == 0 {
		ups = []setUp{{}}
	}
	for i := range ups {
		axle, err := s.assembleIn(&ups[i], changes, hold)
		out = append(out, limitCar{ups[i].Name, axle, ups[i].From, err})
	}
	return out
}

// assembleIn returns the car with changes in a set-up.
func (s *sweeper) assembleIn(up *setUp, changes []solver.Change, hold solver.Hold) (*solver.Axle, error) {
	if up.holds {
		hold = up.Hold
	}
	return s.base.Assemble(append(append([]solver.Change(nil), changes...), up.Changes...), hold)
}

// standsIn returns how cars stand to a limit of the study: that which has the least room,
// with its set-up.
func (s *sweeper) standsIn(l *study.Limit, limit *optimize.Limit, cars []limitCar) (out LimitResult) {
	for i := range cars {
		c := &cars[i]
		var state optimize.LimitState
		if c.err == nil {
			state = limit.State(c.axle, c.from, s.ws)
		} else {
			state = limit.Unbuilt(c.err)
		}
		state.Scenario = c.scenario
		if here := s.stands(l, state); i == 0 || here.Room() < out.Room() {
			out = here
		}
	}
	return out
}
