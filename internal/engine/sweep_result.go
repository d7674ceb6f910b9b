package engine

import (
	"toewright/internal/study"
	"toewright/solver"
)

// SweepResult is what [Sweep] returns.
type SweepResult struct {
	Units  study.Units `json:"units"` // of all lengths; angles are in degrees
	Sweeps []CarSweep  `json:"sweeps"`
}

// CarSweep is one side of one car along its travel.
type CarSweep struct {
	Candidate string  `json:"candidate"`
	Side      string  `json:"side"`
	Motion    string  `json:"motion"`
	TravelAt  string  `json:"travelAt,omitzero"` // "contact" where travel counts there
	Steer     float64 `json:"steer"`
	Heave     float64 `json:"heave,omitzero"`
	Roll      float64 `json:"roll,omitzero"`
	// Positions are those reached, from droop to bump.
	Positions []Position `json:"positions"`
	// Reach is nil where the whole window was reached.
	Reach *Reach `json:"reach,omitzero"`
}

// Position is a wheel at one travel. Signs are those of ISO 8855 as package solver
// states them.
type Position struct {
	Travel             float64    `json:"travel"` // as asked for, from the static height
	Toe                float64    `json:"toe"`    // static toe included
	Camber             float64    `json:"camber"`
	Caster             Number     `json:"caster"` // of this wheel; as a setpoint of a solid axle it is the mean of both
	KingpinInclination Number     `json:"kingpinInclination"`
	WheelCentre        [3]float64 `json:"wheelCentre"`
	HalfTrackChange    float64    `json:"halfTrackChange"` // of the contact point, outboard
	WheelbaseChange    float64    `json:"wheelbaseChange"` // of the contact point, forward
	// ScrubRadius and Trail are along the vehicle's y and x, in front and side view,
	// also of a wheel that is steered (ISO 8855 has them along the wheel's own axes).
	ScrubRadius Number `json:"scrubRadius"`
	Trail       Number `json:"trail"`
	ToeRate     Number `json:"toeRate"` // of the toe by the travel, degrees per unit of length
	// FrontCentre and SideCentre are the instant centres in front and side view,
	// none where the knuckle does not turn in that view.
	FrontCentre      [3]Number `json:"frontCentre"`
	SideCentre       [3]Number `json:"sideCentre"`
	RollCentreHeight Number    `json:"rollCentreHeight"` // above the ground, of this wheel and its mirror image
	InnerBallAngle   Number    `json:"innerBallAngle"`   // of the rod, from the joint's neutral place
	OuterBallAngle   Number    `json:"outerBallAngle"`
}

// Reach says where a linkage locks. Distances are positive, from the static height.
type Reach struct {
	Bump  *float64 `json:"bump"`  // nil where all the bump asked for was reached
	Droop *float64 `json:"droop"` // nil where all the droop asked for was reached
	Link  string   `json:"link"`  // what ends the travel first
	// Unsure is set where the linkage could not be followed any further though no
	// lock was found.
	Unsure bool `json:"unsure,omitzero"`
}

// result returns a side of the car moved last.
func (s *sweeper) result(car car, side solver.Side, a Attitude) CarSweep {
	c := &s.curves[side]
	out := CarSweep{
		Candidate: car.name, Side: side.String(), Motion: s.motion.String(),
		Steer: a.Steer, Heave: a.Heave, Roll: a.Roll,
		TravelAt:  map[bool]string{true: contactTravel}[s.contact],
		Positions: make([]Position, len(c.Positions)),
		Reach:     s.reach(&c.Reach),
	}
	travels := s.grid.from(c.Positions)
	for i := range c.Positions {
		out.Positions[i] = s.position(&c.Positions[i])
		out.Positions[i].Travel = travels[i]
	}
	return out
}

func (s *sweeper) position(p *solver.Position) Position {
	mm := s.doc.Units.FromMillimetres
	w, n := p.WheelCentre, &p.Instant
	return Position{
		Travel:             mm(p.Travel),
		Toe:                p.Toe.Degrees(),
		Camber:             p.Camber.Degrees(),
		Caster:             Number(p.Caster.Degrees()),
		KingpinInclination: Number(p.KingpinInclination.Degrees()),
		WheelCentre:        [3]float64{mm(w.X), mm(w.Y), mm(w.Z)},
		HalfTrackChange:    mm(p.HalfTrackChange),
		WheelbaseChange:    mm(p.WheelbaseChange),
		ScrubRadius:        Number(mm(p.ScrubRadius)),
		Trail:              Number(mm(p.Trail)),
		ToeRate:            degrees(s.doc.Units.Millimetres(n.ToeRate)),
		FrontCentre:        s.place(n.FrontCentre),
		SideCentre:         s.place(n.SideCentre),
		RollCentreHeight:   Number(mm(n.RollCentreHeight)),
		InnerBallAngle:     degrees(p.Joints.Inner.Radians()),
		OuterBallAngle:     degrees(p.Joints.Outer.Radians()),
	}
}

// place returns a point that may lie at infinity.
func (s *sweeper) place(v solver.Vec) [3]Number {
	mm := s.doc.Units.FromMillimetres
	return [3]Number{Number(mm(v.X)), Number(mm(v.Y)), Number(mm(v.Z))}
}

// reach returns nil for a reach of the whole window.
func (s *sweeper) reach(r *solver.Reach) *Reach {
	if r.Whole() {
		return nil
	}
	out := &Reach{Link: r.Link(), Unsure: r.BumpUnsure || r.DroopUnsure}
	if r.BumpEnds {
		bump := s.doc.Units.FromMillimetres(r.Bump)
		out.Bump = &bump
	}
	if r.DroopEnds {
		droop := s.doc.Units.FromMillimetres(r.Droop)
		out.Droop = &droop
	}
	return out
}
