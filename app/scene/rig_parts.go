package scene

import (
	"slices"
	"strings"

	"toewright/solver"
)

// addSide adds the parts of one side.
func (r *rig) addSide(d *solver.Design, s solver.Side) {
	r.wheel[s], _ = r.role(s, solver.WheelCentreRole)
	r.arm[s], _ = r.role(s, solver.TieRodOuterRole)
	r.inner[s], _ = r.role(s, solver.TieRodInnerRole)
	o := d.Kind.Outline()
	r.addAxis(s, &o)
	if len(o.Rods) == 0 {
		r.addEnd(s)
	} else {
		r.addRods(s, &o)
	}
	r.addSteeringArm(s)
}

// addAxis sets the steering axis of a side. Where none runs between joints, as of a
// multi-link, the arm is drawn from the wheel centre.
func (r *rig) addAxis(s solver.Side, o *solver.Outline) {
	r.axes[s] = [2]ref{r.wheel[s], r.wheel[s]}
	if o.Axis[0] != o.Axis[1] {
		r.axes[s] = [2]ref{{sideGroup, s, o.Axis[0]}, {sideGroup, s, o.Axis[1]}}
	}
}

// hasAxis reports whether the steering axis runs through joints.
func (r *rig) hasAxis() bool { return r.axes[0][0] != r.axes[0][1] }

// addRods adds what locates a knuckle, and the knuckle: rods and, where two of them
// end in one ball, arms; and the strut where there is one.
func (r *rig) addRods(s solver.Side, o *solver.Outline) {
	ends := map[int]int{}
	for _, x := range o.Rods {
		ends[x.Outer]++
	}
	hull := []ref{r.wheel[s]}
	for _, x := range o.Rods {
		from, to := ref{sideGroup, s, x.Inner}, ref{sideGroup, s, x.Outer}
		width := float64(rodWidth)
		if ends[x.Outer] > 1 {
			width = armWidth
		}
		r.bars = append(r.bars, bar{from, to, width, partLayer})
		if !slices.Contains(r.pivots, from) {
			r.pivots = append(r.pivots, from)
		}
		if !slices.Contains(hull, to) {
			r.balls, hull = append(r.balls, to), append(hull, to)
		}
	}
	if low, top := o.Strut[0], o.Strut[1]; low != top {
		r.struts = append(r.struts, [2]ref{{sideGroup, s, low}, {sideGroup, s, top}})
		hull = append(hull, ref{sideGroup, s, low})
	}
	r.hulls = append(r.hulls, hull)
}

// addEnd adds one end of a solid axle: its knuckle on its kingpin.
func (r *rig) addEnd(s solver.Side) {
	upper, lower := r.axes[s][1], r.axes[s][0]
	r.bars = append(r.bars, bar{lower, upper, spindleWidth, knuckleLayer})
	r.hulls = append(r.hulls, []ref{r.wheel[s], lower, upper})
}

// addSteeringArm adds the arm from the steering axis to its ball, and the tie rod of
// that side where it has an inner ball.
func (r *rig) addSteeringArm(s solver.Side) {
	r.bars = append(r.bars, bar{ref{group: footGroup, side: s}, r.arm[s], steerWidth, knuckleLayer})
	r.balls = append(r.balls, r.arm[s])
	if inner, ok := r.role(s, solver.TieRodInnerRole); ok {
		r.bars = append(r.bars, bar{inner, r.arm[s], rodWidth, rodLayer})
		r.balls = append(r.balls, inner)
	}
}

// addCommon adds the beam of a solid axle, its links, tie rod and drag link.
func (r *rig) addCommon(k *solver.Kind) {
	if len(k.CommonPoints) == 0 {
		return
	}
	r.bars = append(r.bars,
		bar{r.axes[solver.Left][0], r.axes[solver.Right][0], beamWidth, partLayer},
		bar{r.arm[solver.Left], r.arm[solver.Right], rodWidth, rodLayer})
	for i := 0; i+1 < len(k.CommonPoints); i += 2 {
		from, to := ref{group: commonGroup, index: i}, ref{group: commonGroup, index: i + 1}
		if strings.HasPrefix(k.CommonPoints[i].Name, "dragLink") {
			r.bars = append(r.bars, bar{from, to, rodWidth, rodLayer})
			r.balls = append(r.balls, from, to)
			continue
		}
		r.bars = append(r.bars, bar{from, to, armWidth, partLayer})
		r.pivots = append(r.pivots, from)
		r.balls = append(r.balls, to)
	}
}

// addGear adds pitman arm, idler arm and centre link.
func (r *rig) addGear(g *solver.Gear) {
	n := g.PointCount()
	for i := 0; i+1 < n; i += 2 {
		from, to := ref{group: gearGroup, index: i}, ref{group: gearGroup, index: i + 1}
		r.bars = append(r.bars, bar{from, to, steerWidth, bodyLayer})
		r.pivots = append(r.pivots, from)
		r.balls = append(r.balls, to)
	}
	if n == len(solver.GearPoints) {
		r.bars = append(r.bars, bar{ref{group: gearGroup, index: 1}, ref{group: gearGroup, index: 3}, steerWidth, rodLayer})
	}
}
