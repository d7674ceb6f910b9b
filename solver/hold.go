package solver

import "fmt"

// Hold is the set of setpoints that are re-solved after a change. What is not
// held floats, the parts keeping their lengths.
type Hold uint8

// The setpoints that can be held. HoldAll is what a candidate does unless it
// says otherwise.
const (
	HoldToe Hold = 1 << iota
	HoldCamber
	HoldCaster

	HoldNone Hold = 0
	HoldAll       = HoldToe | HoldCamber | HoldCaster
)

// ParseHold returns the set of the names "toe", "camber" and "caster".
func ParseHold(names []string) (Hold, error) {
	h := HoldNone
	for _, n := range names {
		switch n {
		case "toe":
			h |= HoldToe
		case "camber":
			h |= HoldCamber
		case "caster":
			h |= HoldCaster
		default:
			return 0, &InputError{"hold", fmt.Sprintf("names %q; use toe, camber, caster", n)}
		}
	}
	return h, nil
}

// with returns h and the setpoints that cs set: what is set is held.
func (h Hold) with(cs []applied) Hold {
	for _, c := range cs {
		if !c.seed && c.Parameter.stage == setpointStage && c.Parameter.set != rideHeightSetpoint {
			h |= 1 << c.Parameter.set
		}
	}
	return h
}
