package study

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"toewright/solver"
)

// Bounds of what a car's wheel bears at rest, N, and of a ball joint's stud, mm: far
// beyond those of real cars (common practice).
const (
	leastWheelLoad, mostWheelLoad = 500, 60_000
	thinnestStud, thickestStud    = 5, 40
	tallestStud                   = 200
)

// softest is the least stiffness of what locates a wheel, N/mm: rubber of a road car has
// some thousands (common practice).
const softest = 100

// checkLoads looks for kilograms for newtons, studs in other units, cases that cannot
// be told apart or do nothing, and loaded wheels without a spring.
func checkLoads(d *Document) []Finding {
	var found []Finding
	slip := func(path, message, suggestion string) {
		found = append(found, Finding{path, Warning, message, suggestion})
	}
	if w := d.Vehicle.WheelLoad; w != 0 && (w < leastWheelLoad || w > mostWheelLoad) {
		slip("vehicle.wheelLoad", fmt.Sprintf("%g N is not a wheel's static load", w), "is it a mass, or the whole car's? A kilogram weighs 9.81 N")
	}
	if s := d.outerStud(); s != nil {
		if mm := d.Units.Millimetres(s.Diameter); mm < thinnestStud || mm > thickestStud {
			slip("tieRod.outerBall.stud.diameter", fmt.Sprintf("%g %s is not a stud's", s.Diameter, d.Units), "it is where the stud is clamped, in the file's units")
		}
		if d.Units.Millimetres(s.Height) > tallestStud {
			slip("tieRod.outerBall.stud.height", fmt.Sprintf("%g %s is not a stud's", s.Height, d.Units), "it is from the face that clamps the stud to the ball, in the file's units")
		}
	}
	for _, key := range slices.Sorted(maps.Keys(d.Stiffness)) {
		if k := d.Stiffness[key]; k < softest {
			slip("stiffness."+key, fmt.Sprintf("%g N/mm is soft for what locates a wheel", k), "is it in kN/mm? Rubber of a road car has some thousand N/mm")
		}
	}
	if names := d.StiffnessLacking(); len(names) > 0 {
		found = append(found, Finding{"stiffness", Note, strings.Join(names, ", ") + " missing: " + StiffnessNeeded, ""})
	}
	if len(d.Loads) == 0 {
		return found
	}
	found = append(found, findingOf(d.ReadyForLoads())...)
	for i := range d.Loads {
		if c := &d.Loads[i]; c.Left == nil && c.Right == nil {
			found = append(found, Finding{fmt.Sprintf("loads.%d", i), Note, "puts nothing on either wheel", ""})
		}
	}
	return append(found, d.SpringsLacking()...)
}

// outerStud returns the stud of the tie rod's outer ball, nil where none is stated.
func (d *Document) outerStud() *Stud {
	if d.TieRod == nil || d.TieRod.OuterBall == nil {
		return nil
	}
	return d.TieRod.OuterBall.Stud
}

// SpringsLacking returns a finding for each spring that a load case needs and the study
// does not state.
func (d *Document) SpringsLacking() []Finding {
	kind, err := solver.KindByName(d.Suspension.Type)
	if err != nil {
		return nil
	}
	var found []Finding
	seen := map[string]bool{}
	for i := range d.Loads {
		for _, side := range sides {
			path := d.SpringPath(side)
			if seen[path] || !d.needsSpring(kind, &d.Loads[i], side) || d.SpringOf(side) != nil {
				continue
			}
			seen[path] = true
			found = append(found, Finding{path, Warning, "is missing: " + SpringNeeded, ""})
		}
	}
	return found
}

// SpringNeeded says what a spring is needed for, and what to do.
const SpringNeeded = "a loaded wheel needs the spring that holds it at its travel; state its two mounts"

// needsSpring reports whether a case needs the spring of a side: that of a loaded
// wheel, unless a strut serves, and both of a solid axle.
func (d *Document) needsSpring(kind *solver.Kind, c *LoadCase, side Side) bool {
	if isAxle(kind) {
		return c.Left != nil || c.Right != nil
	}
	o := kind.Outline()
	return c.On(side) != nil && o.Strut[0] == o.Strut[1]
}

// SpringOf returns the mounts of the spring that holds a side's wheel: the spring's,
// else the damper's; nil where neither is stated.
func (d *Document) SpringOf(side Side) *Damper {
	c := d.Suspension.Corner(side)
	if c.Spring != nil {
		return c.Spring
	}
	return c.Damper
}

// SpringPath returns where a side's spring stands in the file.
func (d *Document) SpringPath(side Side) string {
	switch {
	case d.Suspension.Common != nil:
		return "suspension.springs." + string(side)
	case d.Suspension.Right == nil:
		side = Left // of which the right one is the mirror image
	}
	return "suspension." + string(side) + ".spring"
}
