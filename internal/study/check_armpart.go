package study

import "fmt"

// Bounds of what is bolted to a knuckle, mm and change of diameter by length: far from
// what is made, near enough to find a slip of units.
const (
	thinnestArm, thickestArm = 4.0, 80.0
	leastHole, mostHole      = 5.0, 60.0
	// steepestTaper is twice the 1 1/2 in per foot of most ball joints' studs; one in ten
	// is the other usual one (common practice).
	steepestTaper = 0.25
)

// checkArm looks for millimetres in inches and the reverse, and for degrees or per cent in
// place of a taper.
func checkArm(d *Document) []Finding {
	a := d.Arm
	if a == nil {
		return nil
	}
	var found []Finding
	within := func(path, what string, value, least, most float64) {
		if mm := d.Units.Millimetres(value); value != 0 && !(mm >= least && mm <= most) {
			found = append(found, Finding{"arm." + path, Warning, fmt.Sprintf("%g %s is not an arm's %s", value, d.Units, what), "it is in the units of the file"})
		}
	}
	within("thickness", "thickness", a.Thickness, thinnestArm, thickestArm)
	within("boltDiameter", "bolt hole", a.BoltDiameter, leastHole, mostHole)
	if h := a.Hole; h != nil {
		within("hole.largeDiameter", "hole", h.LargeDiameter, leastHole, mostHole)
		if h.Taper > steepestTaper {
			found = append(found, Finding{"arm.hole.taper", Warning, fmt.Sprintf("%g is not a ball joint's taper", h.Taper), "it is the change of diameter by length: 0.125 is 1 1/2 in per foot, 0.1 one in ten"})
		}
	}
	return found
}
