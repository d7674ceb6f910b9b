package study

import "toewright/solver"

// Steering types as the file names them.
const (
	Rack       = "rack"
	CentreLink = "centre-link"
	NoGear     = "none" // NoGear is a fixed toe link, as on a rear axle.
)

// Steering is the gear that moves the inner balls of the tie rods, or that of a
// solid axle's drag link. Axes are directions of any length.
type Steering struct {
	Type string `json:"type" rule:"required,oneof=rack|centre-link|none"`
	Axis *Vec3  `json:"axis,omitzero"` // Axis is the direction in which a rack moves; nil is along y.

	PitmanPivot *Vec3 `json:"pitmanPivot,omitzero"`
	PitmanAxis  *Vec3 `json:"pitmanAxis,omitzero"`
	PitmanBall  *Vec3 `json:"pitmanBall,omitzero"`
	// The idler's keys are all absent where the pitman arm carries only a drag link.
	IdlerPivot *Vec3 `json:"idlerPivot,omitzero"`
	IdlerAxis  *Vec3 `json:"idlerAxis,omitzero"`
	IdlerBall  *Vec3 `json:"idlerBall,omitzero"`

	// PerTurn is the steering input per turn of the steering wheel: a length
	// for a rack, degrees of the pitman arm for a centre link; 0 where not stated.
	PerTurn float64 `json:"perTurn,omitzero" rule:"positive"`
	// Lock is the most steering input to either side, as PerTurn; 0 where not stated.
	Lock float64 `json:"lock,omitzero" rule:"positive"`
}

// gearVec is one vector of a gear with its key.
type gearVec struct {
	key   string
	value **Vec3
}

// pitman lists the vectors of the pitman arm.
func (s *Steering) pitman() []gearVec {
	return []gearVec{{"pitmanPivot", &s.PitmanPivot}, {"pitmanAxis", &s.PitmanAxis}, {"pitmanBall", &s.PitmanBall}}
}

// idler lists the vectors of the idler arm.
func (s *Steering) idler() []gearVec {
	return []gearVec{{"idlerPivot", &s.IdlerPivot}, {"idlerAxis", &s.IdlerAxis}, {"idlerBall", &s.IdlerBall}}
}

// HasIdler reports whether any key of the idler arm is given.
func (s *Steering) HasIdler() bool {
	for _, v := range s.idler() {
		if *v.value != nil {
			return true
		}
	}
	return false
}

// point returns the place of one of [solver.GearPoints], or nil.
func (s *Steering) point(h solver.Hardpoint) *Vec3 {
	for _, v := range append(s.pitman(), s.idler()...) {
		if v.key == h.Name {
			return *v.value
		}
	}
	return nil
}

// problem returns the key that does not fit the type of gear and what is wrong
// with it, or two empty texts. A solid axle's drag link needs no idler.
func (s *Steering) problem(needsIdler bool) (key, message string) {
	if s.Type != CentreLink {
		return s.unused()
	}
	if s.Axis != nil {
		return "axis", "not used by a centre link; leave it out or use type \"rack\""
	}
	wanted := s.pitman()
	if needsIdler || s.HasIdler() {
		wanted = append(wanted, s.idler()...)
	}
	for _, v := range wanted {
		if *v.value == nil {
			return v.key, "missing; a centre link needs pivot, axis and ball of its arms"
		}
	}
	return "", ""
}

// unused returns the key that a rack or no gear at all has no use for.
func (s *Steering) unused() (key, message string) {
	for _, v := range append(s.pitman(), s.idler()...) {
		if *v.value != nil {
			return v.key, "used only by type \"centre-link\"; leave it out or change steering.type"
		}
	}
	if s.Type == NoGear && s.Axis != nil {
		return "axis", "not used by type \"none\"; leave it out or use type \"rack\""
	}
	return "", ""
}
