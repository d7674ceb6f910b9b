package solver

// extent is how far changes reach into a unit.
type extent uint8

const (
	nothing   extent = iota
	points           // coordinates alone
	freeParts        // parts too, but only what rods that set toe hang on, and toe is held
	parts            // any parts, or setpoints
)

// extent returns how far changes reach into u, the setpoints h being held.
func (u *unit) extent(cs []applied, h Hold) extent {
	e := nothing
	for _, c := range cs {
		e = max(e, u.extentOf(c.Change, h))
	}
	return e
}

// extentOf returns how far one change reaches.
func (u *unit) extentOf(c *Change, h Hold) extent {
	stage := c.Parameter.stage
	if stage != pointStage && stage != partStage {
		if u.touches(c) {
			return parts
		}
		return nothing
	}
	switch moved := u.movedBy(c); {
	case moved == 0:
		return nothing
	case stage == pointStage:
		return points
	case h&HoldToe != 0 && moved&^u.free == 0:
		return freeParts
	}
	return parts
}
