package solver

import (
	"errors"
	"fmt"
	"math"
)

// Bounds of the search for a travel.
const (
	// firstTravel is the first step away from static height, mm; later ones
	// double.
	firstTravel = 5.0
	// maxTravel is the farthest a wheel is moved, mm.
	maxTravel = 1000.0
	// travelLimit is the step, mm, below which the secant has arrived; it takes
	// about ten, and maxSecants at most.
	travelLimit, maxSecants = 1e-9, 100
	// reachShare keeps a search off the lock itself, where a reading has no
	// slope.
	reachShare = 1 - 1e-9
)

// ReadingError reports a reading of travel that the wheel does not come to.
type ReadingError struct {
	Side    Side
	Reading float64 // mm
	// Home is what is read at static height, End at the Travel where the way
	// towards the reading ends, all in mm.
	Home, End, Travel float64
}

func (e *ReadingError) Error() string {
	return fmt.Sprintf("solver: %s side: travel reading %.5g mm is out of reach: it goes from %.5g mm at static height to %.5g mm at travel %.4g mm; check its zero and which way it counts",
		e.Side, e.Reading, e.Home, e.End, e.Travel)
}

// TravelOf returns the wheel travel, in mm, at which a gauge on side s reads the
// given value: the inverse of [Axle.ReadTravel]. Where there are several it is the
// nearest to static height in the direction in which the gauge there runs towards
// the reading. It returns a [*ReadingError] for a reading that is not reached.
func (x *Axle) TravelOf(ws *Workspace, s Side, g *TravelGauge, reading float64) (float64, error) {
	switch g.Reading {
	case WheelCentreReading:
		return reading - g.Zero, nil
	case BlockReading:
		return g.Zero - reading, nil
	}
	p, err := x.probe(s, g)
	if err != nil {
		return 0, err
	}
	q := travelQuest{x: x, ws: ws, probe: p, reading: reading}
	return q.find()
}

// travelQuest looks for the travel at which a probe reads a value.
type travelQuest struct {
	x       *Axle
	ws      *Workspace
	probe   *travelProbe
	reading float64
}

// excess returns by how much the probe reads too much at a travel, and the travel
// itself, or that just short of the lock on the way there.
func (q *travelQuest) excess(travel float64) (e, at float64, err error) {
	v, err := q.probe.read(q.x, q.ws, travel)
	var lock *ReachError
	if errors.As(err, &lock) {
		travel *= lock.Share * reachShare
		v, err = q.probe.read(q.x, q.ws, travel)
	}
	return v - q.reading, travel, err
}

// find steps outward until the reading is passed, then narrows down.
func (q *travelQuest) find() (float64, error) {
	home, _, err := q.excess(0)
	if home == 0 || err != nil {
		return 0, err
	}
	near, _, err := q.excess(firstTravel / 100)
	if err != nil {
		return 0, err
	}
	direction := -math.Copysign(1, home*(near-home))
	from, short := 0.0, home
	for step := firstTravel; ; step *= 2 {
		asked := direction * math.Min(math.Abs(from)+step, maxTravel)
		e, at, err := q.excess(asked)
		if err != nil {
			return 0, err
		}
		if e*home <= 0 {
			return q.narrow(from, short, at, e)
		}
		if at != asked || math.Abs(at) == maxTravel {
			return 0, q.outOfReach(home, e, at)
		}
		from, short = at, e
	}
}

// outOfReach reports that the reading stays away by e even at travel at.
func (q *travelQuest) outOfReach(home, e, at float64) error {
	return &ReadingError{Side: q.probe.side, Reading: q.reading,
		Home: q.reading + home, End: q.reading + e, Travel: at}
}

// narrow finds the travel between a and b, where the excess has opposite signs, by
// the Illinois rule: the secant, halving the value of an end that stays.
func (q *travelQuest) narrow(a, fa, b, fb float64) (float64, error) {
	for range maxSecants {
		c := b - fb*(b-a)/(fb-fa)
		fc, _, err := q.excess(c)
		if err != nil {
			return 0, err
		}
		if fc*fb < 0 {
			a, fa = b, fb
		} else {
			fa /= 2
		}
		moved := math.Abs(c - b)
		if b, fb = c, fc; fb == 0 || moved <= travelLimit {
			break
		}
	}
	return b, nil
}
