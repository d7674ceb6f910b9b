package engine

import (
	"cmp"
	"context"
	"math"

	"toewright/internal/study"
	"toewright/solver"
)

// CompareOptions say what is compared with what, and where.
type CompareOptions struct {
	// Candidate restricts the comparison to one car; "base" is the base car.
	Candidate string `json:"candidate,omitzero"`
	// Yardstick is the car that differences are taken from: where empty, that of
	// the study's display, else the base car.
	Yardstick string `json:"yardstick,omitzero"`
	// Motion is "both" (where empty), "left", "right" or "roll".
	Motion string `json:"motion,omitzero"`
	Attitude
}

// CompareResult is what [Compare] returns.
type CompareResult struct {
	Units     study.Units `json:"units"` // of all lengths; angles are in degrees
	Yardstick string      `json:"yardstick"`
	Motion    string      `json:"motion"`
	Steer     float64     `json:"steer"`
	Heave     float64     `json:"heave,omitzero"`
	Roll      float64     `json:"roll,omitzero"`
	Window    Window      `json:"window"` // that of the search where the study has one
	Cars      []Compared  `json:"cars"`   // left then right of each
	// Served says of each car how it serves the set-ups of the study's search and
	// stands to its limits; none where it has neither.
	Served []Served `json:"served,omitzero"`
	// Target is the wanted toe change, none where it is flat.
	Target *TargetCurves `json:"target,omitzero"`
}

// Compared is one side of one car.
type Compared struct {
	Candidate string        `json:"candidate"`
	Changes   study.Changes `json:"changes,omitzero"`
	Side      string        `json:"side"`
	Figures
	Difference Figures `json:"difference"` // from the yardstick
	// Reach is nil where the whole window was reached. Figures are of the
	// positions reached.
	Reach *Reach `json:"reach,omitzero"`
}

// Compare returns the figures of the base car and each candidate over the window
// of the search, or else of travel, and their differences from one of them.
func Compare(ctx context.Context, d *study.Document, o CompareOptions) (*CompareResult, error) {
	s, err := newJudge(d, o.Motion)
	if err != nil {
		return nil, err
	}
	name, key := o.Yardstick, "yardstick"
	if name == "" {
		name, key = cmp.Or(yardstick(d), study.BaseName), "display.yardstick"
	}
	yard, err := s.named(key, name)
	if err != nil {
		return nil, err
	}
	against, err := s.compared(yard, o.Attitude)
	if err != nil {
		return nil, err
	}
	list, err := s.pick(ctx, o.Candidate)
	if err != nil {
		return nil, err
	}
	w := s.window
	out := &CompareResult{
		Units: d.Units, Yardstick: name, Motion: s.motion.String(),
		Steer: o.Steer, Heave: o.Heave, Roll: o.Roll,
		Window: Window{Bump: w.Bump, Droop: w.Droop, Step: w.Step},
	}
	out.Target = s.targetCurves()
	serving, err := s.serving()
	if err != nil {
		return nil, err
	}
	for _, car := range list {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if serving != nil {
			out.Served = append(out.Served, serving.of(car))
		}
		sides, err := s.compared(car, o.Attitude)
		if err != nil {
			return nil, err
		}
		for i := range sides {
			sides[i].Difference = sides[i].less(&against[i].Figures)
			out.Cars = append(out.Cars, sides[i])
		}
	}
	return out, nil
}

// yardstick returns the study's own, or "".
func yardstick(d *study.Document) string {
	if d.Display == nil {
		return ""
	}
	return d.Display.Yardstick
}

// compared returns both sides of a car, without differences.
func (s *sweeper) compared(car car, a Attitude) (out [2]Compared, err error) {
	if err := s.move(car, a); err != nil {
		return out, err
	}
	wanted := targets(s.doc)
	for _, side := range solver.Sides {
		c := &s.curves[side]
		out[side] = Compared{
			Candidate: car.name, Changes: s.changes(car.name), Side: side.String(),
			Figures: s.figures(c, &wanted[side]), Reach: s.reach(&c.Reach),
		}
		f := &out[side].Figures
		f.TieRodLength = Number(s.length(car.axle.TieRodLength(side)))
		f.ArmLength = Number(s.length(car.axle.SteeringArm(side)))
		f.InnerBallAtLock = s.atLock("innerBallAngle", car, side)
		f.OuterBallAtLock = s.atLock("outerBallAngle", car, side)
		f.SteeringFigures = s.steeringFigures(car.axle, s.ws, side)
	}
	return out, nil
}

// changes returns those of a candidate; none of the base car.
func (s *sweeper) changes(name string) study.Changes {
	if k := s.doc.Candidate(name); k != nil && name != study.BaseName {
		return k.Changes
	}
	return nil
}

// atLock returns the largest angle of a joint of one side through the window straight
// ahead and at full lock to either side, as the limit on it is measured; none where the
// study states no lock, or the car does not get there.
func (s *sweeper) atLock(joint study.LimitKey, c car, side solver.Side) Number {
	if s.doc.Steering == nil || s.doc.Steering.Lock == 0 {
		return none
	}
	any := math.Inf(1)
	m, err := s.limitMeter(&study.Limit{Result: joint, Max: &any, Side: study.Side(side.String()), At: study.AtLock})
	if err != nil {
		return none
	}
	r := m.measure(c.axle, solver.Attitude{}, s.ws)
	if r.Err != nil {
		return none
	}
	return Number(r.Most.Value)
}
