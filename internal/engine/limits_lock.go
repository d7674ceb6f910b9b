package engine

import (
	"fmt"
	"math"

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
	// Case is the load case of a limit on forces, which states Travel and Steer.
	Case string `json:"case,omitzero"`
}

// Words says where that is, such as "at 60 mm bump and full left lock (left wheel)";
// length writes a length of the file with its unit.
func (a *LimitAt) Words(length func(float64) string) string {
	if a.Case != "" {
		return fmt.Sprintf("under load %q (%s wheel)", a.Case, a.Side)
	}
	height, steer := "static height", ", straight ahead"
	switch {
	case a.Travel > 0:
		height = length(a.Travel) + " bump"
	case a.Travel < 0:
		height = length(-a.Travel) + " droop"
	}
	switch {
	case a.Lock != "":
		steer = fmt.Sprintf(" and full %s lock", a.Lock)
	case a.Steer != 0:
		steer = ", steered as its set-up is"
	}
	return fmt.Sprintf("at %s%s (%s wheel)", height, steer, a.Side)
}

// Where says in which position or load case a limit at lock or under load is nearest to being broken, or why the
// car has no value; nothing of other limits.
func (l *LimitResult) Where(length func(float64) string) string {
	switch {
	case l.At == nil && !l.Value.Valid() && !l.NoCar:
		return l.Problem
	case l.At == nil:
		return ""
	case l.Value.Valid():
		return l.At.Words(length)
	case l.At.Link == "":
		return "the gear ends before it gets there, " + l.At.Words(length)
	}
	return l.At.Link + " stands in the way " + l.At.Words(length)
}

// limitAt returns a position in the file's units.
func (s *sweeper) limitAt(p *optimize.LimitPlace) *LimitAt {
	out := &LimitAt{Side: p.Side.String(), Travel: s.doc.Units.FromMillimetres(p.Travel), Link: p.Link}
	if p.Steer == 0 {
		return out
	}
	out.Steer = s.steerShown(p.Steer)
	if lock := s.doc.Steering.Lock; math.Abs(p.Steer) == s.steer(lock) {
		out.Steer, out.Lock = math.Copysign(lock, p.Steer), string(s.hand(p.Steer))
	}
	return out
}

// hand returns the hand to which a steering input turns the car as measured.
func (s *sweeper) hand(input float64) study.Side {
	base, err := s.byName(study.BaseName)
	if err != nil {
		return study.Right
	}
	if p, err := steered(base.axle, s.ws, 0, solver.Attitude{}); err == nil && p.MeanRate()*input > 0 {
		return study.Left
	}
	return study.Right
}
