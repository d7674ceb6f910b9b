package scene

import (
	"fmt"
	"strings"

	"toewright/solver"
)

// addSide adds the parts of one side.
func (r *rig) addSide(d *solver.Design, s solver.Side) {
	r.wheel[s], _ = r.role(s, solver.WheelCentreRole)
	r.arm[s], _ = r.role(s, solver.TieRodOuterRole)
	r.inner[s], _ = r.role(s, solver.TieRodInnerRole)
	r.addAxis(s)
	switch {
	case r.at("kingpins.0") >= 0:
		r.addEnd(s)
	case r.at("rods.0.inner") >= 0:
		r.addRods(s)
	default:
		r.addArms(s)
	}
	r.addSteeringArm(s)
}

// addAxis sets the steering axis of a side. A multi-link has none between joints:
// its arm is drawn from the wheel centre.
func (r *rig) addAxis(s solver.Side) {
	for _, pair := range [][2]string{{"lowerBallJoint", "upperBallJoint"}, {"lowerBallJoint", "strutTop"}, {"kingpins.1", "kingpins.0"}} {
		low, up := r.at(pair[0]), r.at(pair[1])
		if low >= 0 && up >= 0 {
			r.axes[s] = [2]ref{{sideGroup, s, low}, {sideGroup, s, up}}
			return
		}
	}
	r.axes[s] = [2]ref{r.wheel[s], r.wheel[s]}
}

// hasAxis reports whether the steering axis runs through joints.
func (r *rig) hasAxis() bool { return r.axes[0][0] != r.axes[0][1] }

// addArms adds wishbones, and the strut where there is one.
func (r *rig) addArms(s solver.Side) {
	for _, arm := range []string{"lower", "upper"} {
		front, rear, ball := r.at(arm+"FrontPivot"), r.at(arm+"RearPivot"), r.at(arm+"BallJoint")
		if front < 0 {
			continue
		}
		at := ref{sideGroup, s, ball}
		for _, pivot := range []int{front, rear} {
			from := ref{sideGroup, s, pivot}
			r.bars = append(r.bars, bar{from, at, armWidth, partLayer})
			r.pivots = append(r.pivots, from)
		}
		r.balls = append(r.balls, at)
	}
	if low := r.at("strutLower"); low >= 0 {
		r.struts = append(r.struts, [2]ref{{sideGroup, s, low}, {sideGroup, s, r.at("strutTop")}})
		r.addKnuckle(s, "lowerBallJoint", "strutLower")
		return
	}
	r.addKnuckle(s, "lowerBallJoint", "upperBallJoint")
}

// addKnuckle adds a knuckle through the wheel centre and some points.
func (r *rig) addKnuckle(s solver.Side, names ...string) {
	hull := []ref{r.wheel[s]}
	for _, name := range names {
		hull = append(hull, ref{sideGroup, s, r.at(name)})
	}
	r.hulls = append(r.hulls, hull)
}

// addRods adds the four rods of a multi-link.
func (r *rig) addRods(s solver.Side) {
	var outer []string
	for i := range 4 {
		in, out := r.at(fmt.Sprintf("rods.%d.inner", i)), r.at(fmt.Sprintf("rods.%d.outer", i))
		from, to := ref{sideGroup, s, in}, ref{sideGroup, s, out}
		r.bars = append(r.bars, bar{from, to, rodWidth, partLayer})
		r.pivots = append(r.pivots, from)
		r.balls = append(r.balls, to)
		outer = append(outer, fmt.Sprintf("rods.%d.outer", i))
	}
	r.addKnuckle(s, outer...)
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
