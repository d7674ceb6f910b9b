package engine

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// LimitAt is a position in which a limit is nearest to being broken.
type LimitAt struct {
	Side   string  `json:"side"`          // of the wheel
	Travel float64 `json:"travel"`        // of both wheels, in the file's unit, bump positive
	Steer  float64 `json:"steer"`         // input, as steering.lock states it
	Lock   string  `json:"lock,omitzero"` // the hand of that input, "left" or "right"; empty straight ahead
	// Link is what keeps the car from the position; empty where it gets there.
	Link string `json:"link,omitzero"`
}

// Words says where that is, such as "at 60 mm bump and full left lock (left wheel)";
// length writes a length of the file with its unit.
func (a *LimitAt) Words(length func(float64) string) string {
	height, steer := "static height", ", straight ahead"
	switch {
	case a.Travel > 0:
		height = length(a.Travel) + " bump"
	case a.Travel < 0:
		height = length(-a.Travel) + " droop"
	}
	if a.Lock != "" {
		steer = fmt.Sprintf(" and full %s lock", a.Lock)
	}
	return fmt.Sprintf("at %s%s (%s wheel)", height, steer, a.Side)
}

// Where says in which position a limit at lock is nearest to being broken, or which
// position the car does not reach; nothing of other limits.
func (l *LimitResult) Where(length func(float64) string) string {
	switch {
	case l.At == nil:
		return ""
	case l.Value.Valid():
		return l.At.Words(length)
	case l.At.Link == "":
		return "the gear ends before it gets there, " + l.At.Words(length)
	}
	return l.At.Link + " stands in the way " + l.At.Words(length)
}

// limitAt returns a position in the file's units, nil for none.
func (s *sweeper) limitAt(p *optimize.LimitPlace) *LimitAt {
	if p == nil {
		return nil
	}
	out := &LimitAt{Side: p.Side.String(), Travel: s.doc.Units.FromMillimetres(p.Travel), Link: p.Link}
	if p.Steer == 0 {
		return out
	}
	out.Steer, out.Lock = math.Copysign(s.doc.Steering.Lock, p.Steer), string(study.Right)
	if p.ToLeft {
		out.Lock = string(study.Left)
	}
	return out
}

// limitSteers returns the steering inputs, mm or radians, at which a limit is looked at
// through the travel.
func (s *sweeper) limitSteers(l *study.Limit) []float64 {
	if l.At != study.AtLock {
		return []float64{0}
	}
	lock := s.steer(s.doc.Steering.Lock)
	return []float64{0, lock, -lock}
}

// atLock reports whether the limit is looked at at both locks too.
func (m *limitMeter) atLock() bool { return len(m.steers) > 1 }

// where returns the position that through finds.
func (m *limitMeter) where(through func(*limitMeter, *solver.Axle, *solver.Workspace) extremum, car *solver.Axle, ws *solver.Workspace) optimize.LimitPlace {
	at := through(m, car, ws).at
	if p, ok := steered(car, ws, 0); ok {
		at.ToLeft = p.MeanRate()*at.Steer > 0
	}
	return at
}

// extremum is the largest or least of what is seen in some positions, and where; NaN
// and the position in the way where one of them cannot be taken.
type extremum struct {
	value float64
	at    optimize.LimitPlace
	most  bool
	there float64 // the value at at
}

func newExtremum(most bool) extremum {
	start := math.Inf(1)
	if most {
		start = -start
	}
	return extremum{value: start, there: start, most: most}
}

// alike is by how much, in mm or degrees, a value must go beyond those before to be
// said to be somewhere else: far above rounding, so that of a wheel and its mirror
// image the same one is named by every machine.
const alike = 1e-9

// see takes the value of a position into account; NaN stays.
func (e *extremum) see(v float64, at optimize.LimitPlace) {
	further := e.there - v
	if e.most {
		further = -further
		e.value = math.Max(e.value, v)
	} else {
		e.value = math.Min(e.value, v)
	}
	if further > alike {
		e.at, e.there = at, v
	}
}

// unreached returns the extremum of a car that cannot be brought to a position.
func unreached(err error, at optimize.LimitPlace) extremum {
	var reach *solver.ReachError
	if errors.As(err, &reach) {
		at.Side, at.Link = reach.Side, reach.Link
	}
	return extremum{value: math.NaN(), at: at}
}

// cutShort likewise of a curve that ends before the travels asked for: the position is
// the first that is not reached.
func cutShort(c *solver.Curve, travels []float64, at optimize.LimitPlace) extremum {
	if r := &c.Reach; r.BumpEnds {
		last := c.Positions[len(c.Positions)-1].Travel
		at.Link, at.Travel = r.BumpLink, travels[slices.Index(travels, last)+1]
	} else {
		at.Link, at.Travel = r.DroopLink, travels[slices.Index(travels, c.Positions[0].Travel)-1]
	}
	return extremum{value: math.NaN(), at: at}
}
