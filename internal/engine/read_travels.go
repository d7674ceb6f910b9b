package engine

import (
	"context"

	"toewright/internal/study"
)

// ReadTravels returns the wheel travels in mm at which a set of readings of the study was
// taken: what was read of the contact, a block, a ball or a damper is turned into the
// travel of the wheel of a car with the parts of the set, which must be one that can be
// solved.
func (l *Live) ReadTravels(d *study.Document, r *study.Reading) ([]float64, error) {
	switch gauge, err := TravelGauge(d, r); {
	case err != nil:
		return nil, err
	case gauge == nil:
		return travelsRead(d, r), nil
	case l.Err != nil:
		return nil, l.Err
	}
	return l.window.readTravels(context.Background(), r)
}

// travelsRead returns the travels of a set in mm as they were read.
func travelsRead(d *study.Document, r *study.Reading) []float64 {
	travels := make([]float64, len(r.Values))
	for i, v := range r.Values {
		travels[i] = d.Units.Millimetres(v[0])
	}
	return travels
}

// readTravels is [Live.ReadTravels].
func (s *sweeper) readTravels(ctx context.Context, r *study.Reading) ([]float64, error) {
	travels := travelsRead(s.doc, r)
	gauge, err := TravelGauge(s.doc, r)
	if err != nil || gauge == nil {
		return travels, err
	}
	car, err := s.axle(r.Changes, nil)
	if err != nil {
		return nil, err
	}
	for i := range travels {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if travels[i], err = car.TravelOf(s.ws, r.Side.Solver(), gauge, travels[i]); err != nil {
			return nil, err
		}
	}
	return travels, nil
}
