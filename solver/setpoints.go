package solver

import "math"

// setpoints are the values that a unit's static position is solved for.
type setpoints struct {
	toe, camber, height [2]target // by wheel
	caster              target
	rods                [2]target // lengths, by steeringRod, where toe floats
}

// setpointsOf returns the setpoints of u: those that cs set, else those that the
// points after coordinate changes stand for.
func (u *unit) setpointsOf(d *Design, pts []dvec, cs []applied) setpoints {
	var s setpoints
	for i, w := range u.wheels {
		s.toe[i] = steady(constant(float64(d.Toe[w.side])))
		s.camber[i] = steady(constant(float64(d.Camber[w.side])))
		s.height[i] = steady(pts[w.centre].z())
	}
	s.caster = steady(u.caster(pts))
	// What is set for both sides comes before what is set for one, which has the
	// last word.
	for _, one := range [2]bool{false, true} {
		for _, c := range cs {
			if c.Parameter.stage == setpointStage && (c.Sides != BothSides) == one {
				s.apply(u, c)
			}
		}
	}
	return s
}

func steady(v dual) target { return target{from: v, to: v} }

func (s *setpoints) apply(u *unit, c applied) {
	if c.Parameter.set == casterSetpoint && u.touches(c.Change) {
		s.caster.to = c.setting(s.caster.to) // one of the whole unit
	}
	for i, w := range u.wheels {
		if !c.Sides.Includes(w.side) {
			continue
		}
		switch c.Parameter.set {
		case toeSetpoint:
			s.toe[i].to = c.setting(s.toe[i].to)
		case camberSetpoint:
			s.camber[i].to = c.setting(s.camber[i].to)
		case rideHeightSetpoint:
			s.height[i].to = s.height[i].to.less(c.amount())
		}
	}
}

// spinOf returns the unit spin axis of a wheel of the given toe and camber,
// pointing outboard.
func (w *wheelSpec) spinOf(toe, camber Angle) Vec {
	st, ct := math.Sincos(float64(toe))
	sc, cc := math.Sincos(float64(camber))
	return Vec{X: st * cc, Y: ct * cc * w.outboard(), Z: -sc}
}
