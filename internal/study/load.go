package study

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
)

// LoadCase is a position of the axle and what then acts on its wheels.
type LoadCase struct {
	Name   string     `json:"name" rule:"required"`
	Source string     `json:"source,omitzero"` // Source says where the loads come from, for who reads the figures.
	Travel float64    `json:"travel,omitzero"` // Travel is that of both wheels, bump positive.
	Steer  float64    `json:"steer,omitzero"`  // Steer is the rack's displacement, or the pitman arm's degrees.
	Left   *WheelLoad `json:"left,omitzero"`   // Left and Right are nil for a wheel that bears nothing.
	Right  *WheelLoad `json:"right,omitzero"`
}

// WheelLoad is what acts on one wheel, in vehicle axes on either side, as if the wheel
// were locked to its knuckle. Nothing is added to it.
type WheelLoad struct {
	Force Vec3 `json:"force" rule:"required"` // Force is in N.
	// At is where the force acts: "contact", the lowest point of the wheel's plane at the
	// tyre's radius and the default, or "wheel-centre".
	At     string `json:"at,omitzero" rule:"oneof=contact|wheel-centre"`
	Moment *Vec3  `json:"moment,omitzero"` // Moment is in N m, by the right hand; nil is none.
}

// On returns what a case puts on a wheel, nil for nothing.
func (c *LoadCase) On(side Side) *WheelLoad {
	if side == Right {
		return c.Right
	}
	return c.Left
}

// Idle reports whether a case puts nothing on a wheel.
func (c *LoadCase) Idle(side Side) bool {
	l := c.On(side)
	return l == nil || l.Force == (Vec3{}) && (l.Moment == nil || *l.Moment == (Vec3{}))
}

// Size returns the largest part of the forces of a case, N, and of its moments, N m.
func (c *LoadCase) Size() float64 {
	size := 0.0
	for _, l := range [2]*WheelLoad{c.Left, c.Right} {
		if l == nil {
			continue
		}
		for k := range l.Force {
			size = max(size, math.Abs(l.Force[k]))
			if l.Moment != nil {
				size = max(size, math.Abs(l.Moment[k]))
			}
		}
	}
	return size
}

// Stiffness is that of what gives under a load, N/mm, by the names of
// [solver.Design.Members].
type Stiffness map[string]float64

// stiffness refuses what the car has not, and what is no stiffness.
func (c *checker) stiffness() *problem {
	if len(c.Stiffness) == 0 {
		return nil
	}
	names := c.design.Members()
	for _, key := range slices.Sorted(maps.Keys(c.Stiffness)) {
		path := "stiffness." + key
		switch k := c.Stiffness[key]; {
		case !slices.Contains(names, key):
			return problemf(path, "%s does not give on this car, want one of %s", key, strings.Join(names, ", "))
		case !(k > 0):
			return problemf(path, "is %g N/mm, want more than 0; leave it out where it is not known", k)
		}
	}
	return nil
}

// StiffnessLacking returns what gives on the car and has no stiffness stated, none where
// the study states no stiffness at all.
func (d *Document) StiffnessLacking() (names []string) {
	design, err := d.Design()
	if err != nil || len(d.Stiffness) == 0 {
		return nil
	}
	for _, name := range design.Members() {
		if d.Stiffness[name] == 0 {
			names = append(names, name)
		}
	}
	return names
}

// StiffnessNeeded says what they are needed for, and what to do.
const StiffnessNeeded = "toe under load is estimated only where all that gives is stated; state its stiffness in N/mm, a large one for a joint that hardly gives"

// ReadyForLoads returns an error that names the key where there are no load cases, or
// two have one name.
func (d *Document) ReadyForLoads() error { return d.casesProblem().err() }

func (d *Document) casesProblem() *problem {
	if len(d.Loads) == 0 {
		return problemf("loads", "none given; state by name what acts on the wheels")
	}
	seen := map[string]bool{}
	for i, c := range d.Loads {
		if seen[c.Name] {
			return problemf(fmt.Sprintf("loads.%d.name", i), "%.60q is taken; give each case a name of its own", c.Name)
		}
		seen[c.Name] = true
	}
	return nil
}

// loadProblem returns what keeps the forces of the load cases from being found.
func (d *Document) loadProblem() *problem {
	if p := d.casesProblem(); p != nil {
		return p
	}
	if f := d.SpringsLacking(); len(f) > 0 {
		return problemf(f[0].Path, "%s", f[0].Message)
	}
	return nil
}
