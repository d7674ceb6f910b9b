package optimize

import "toewright/solver"

// settingIn returns what the absolute parameter of c is set to on a car with
// changes: by the last of them that sets it, else by the design itself.
func settingIn(base *solver.Assembler, changes []solver.Change, c *solver.Change) float64 {
	for i := len(changes) - 1; i >= 0; i-- {
		k := &changes[i]
		if k.Parameter.Key == c.Parameter.Key && (k.Sides == solver.BothSides || k.Sides == c.Sides) {
			return k.Value
		}
	}
	side := solver.Left
	if c.Sides == solver.RightOnly {
		side = solver.Right
	}
	return base.Setting(c.Parameter, side)
}
