package engine

import (
	"math"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// limitMeter measures one limited result of cars. It may be used by several goroutines.
type limitMeter struct {
	*sweeper
	l       *study.Limit
	ranged  measuring
	sides   []solver.Side
	base    *solver.Axle      // the car as measured, for what is counted from it
	travels []float64         // of what is looked at through the travel, mm
	parts   *solver.LoadParts // of what is looked at under loads
	idle    *scratchPool
}

// measuring is how a result is measured of a car about an attitude.
type measuring struct {
	all func(*limitMeter, *posed) optimize.LimitRange
	// spot measures it at one place; nil where there is but one.
	spot func(*limitMeter, *posed, optimize.LimitPlace) (float64, error)
	// oneWheel says that spot needs only the wheel of the place.
	oneWheel bool
	// slopes sets the derivatives there; nil where they are differenced.
	slopes limitSlopes
}

// limitSlopes sets the derivatives of a result at a place by the parameters of tangents.
type limitSlopes func(*limitMeter, *posed, optimize.LimitPlace, *solver.Tangents, []float64) bool

// sloped returns the measuring with derivatives.
func (m measuring) sloped(by limitSlopes) measuring {
	m.slopes = by
	return m
}

// posed is a car about an attitude, and memory to move it in.
type posed struct {
	car   *solver.Axle
	from  solver.Attitude
	ws    *solver.Workspace
	sides []solver.Side // looked at through the travel
}

// measures holds how each of [study.LimitKinds] is measured.
var measures = map[study.LimitKey]measuring{
	"innerBallAngle":           angle(func(j *solver.JointAngles) solver.Angle { return j.Inner }),
	"outerBallAngle":           angle(func(j *solver.JointAngles) solver.Angle { return j.Outer }),
	"threadEngagement":         wheel((*limitMeter).engaged),
	"adjusterRange":            wheel((*limitMeter).adjusterRange),
	"tieRodLength":             wheel((*limitMeter).tieRodLength),
	"dragLinkOuterBallAngle":   angle(func(j *solver.JointAngles) solver.Angle { return j.DragOuter }),
	"dragLinkThreadEngagement": whole((*limitMeter).dragEngaged),
	"dragLinkAdjusterRange":    whole((*limitMeter).dragRange),
	"dragLinkLength":           whole((*limitMeter).dragLength),
	"steeringArmLength":        wheel((*limitMeter).armLength),
	"steeringArmOffset":        wheel((*limitMeter).armOffset),
	"steeringRatio":            whole((*limitMeter).steeringRatio).sloped((*limitMeter).ratioSlopes),
	"turningCircle":            wheel((*limitMeter).circle).sloped((*limitMeter).circleSlopes),
	"ackermann":                wheel((*limitMeter).ackermann).sloped(turnSlopes((*solver.Axle).AckermannRate)),
	"toeOutOnTurns":            wheel((*limitMeter).toeOut).sloped(turnSlopes(toeOutRate)),
	"tieRodLoad":               underLoad(0),
	"armTwist":                 underLoad(1),
	"armBend":                  underLoad(2),
	"studBending":              underLoad(3),
	study.Clearance:            {all: (*limitMeter).clearance, spot: (*limitMeter).clearanceAt},
}

// limitMeter returns what measures a limit, bounds filled in.
func (s *sweeper) limitMeter(l *study.Limit) (*limitMeter, error) {
	m := &limitMeter{sweeper: s, l: l, ranged: measures[l.Result], sides: solver.Sides[:], idle: &scratchPool{}}
	switch l.Side {
	case study.Left:
		m.sides = solver.Sides[:1]
	case study.Right:
		m.sides = solver.Sides[1:]
	}
	base, err := s.byName(study.BaseName)
	if err != nil {
		return nil, err
	}
	m.base, m.parts = base.axle, s.loadParts()
	if k := l.Link; k != nil {
		for _, name := range [2]string{k.From, k.To} {
			if m.hardpoint(name) < 0 {
				return nil, wrongf("search.limits", "link: a %s has no point called %.40q", m.design.Kind.Name, name)
			}
		}
	}
	m.travels, err = s.limitTravels()
	return m, explain(err, "")
}

// measure is the limit's Range.
func (m *limitMeter) measure(car *solver.Axle, from solver.Attitude, ws *solver.Workspace) optimize.LimitRange {
	return m.ranged.all(m, &posed{car, from, ws, m.sides})
}

// spot is the limit's Spot.
func (m *limitMeter) spot(car *solver.Axle, from solver.Attitude, ws *solver.Workspace, at optimize.LimitPlace) float64 {
	v, err := m.ranged.spot(m, &posed{car, from, ws, m.sides}, at)
	if err != nil {
		return math.NaN()
	}
	return v
}

// slopes is the limit's Slopes.
func (m *limitMeter) slopes(car *solver.Axle, from solver.Attitude, ws *solver.Workspace, at optimize.LimitPlace, by *solver.Tangents, out []float64) bool {
	return m.ranged.slopes(m, &posed{car, from, ws, m.sides}, at, by, out)
}

// wheel measures a result that each wheel has once, on the wheels that the limit is for.
// One wheel without a value leaves the car without.
func wheel(of func(*limitMeter, *posed, solver.Side) (float64, error)) measuring {
	all := func(m *limitMeter, p *posed) optimize.LimitRange {
		out := optimize.NewLimitRange()
		for _, s := range m.sides {
			at := optimize.LimitPlace{Side: s}
			v, err := of(m, p, s)
			if err != nil {
				return optimize.Lack(at, err)
			}
			out.See(v, at)
		}
		return out
	}
	return measuring{all: all, spot: func(m *limitMeter, p *posed, at optimize.LimitPlace) (float64, error) { return of(m, p, at.Side) }}
}

// whole measures a result that the axle has once.
func whole(of func(*limitMeter, *posed) (float64, error)) measuring {
	return measuring{all: func(m *limitMeter, p *posed) optimize.LimitRange {
		v, err := of(m, p)
		if err != nil {
			return optimize.Lack(optimize.LimitPlace{}, err)
		}
		out := optimize.NewLimitRange()
		out.See(v, optimize.LimitPlace{})
		return out
	}}
}

func (m *limitMeter) tieRodLength(p *posed, s solver.Side) (float64, error) {
	return m.length(p.car.TieRodLength(s)), nil
}

// engaged is the thread left in the adjuster: a rod grows by being screwed out.
func (m *limitMeter) engaged(p *posed, s solver.Side) (float64, error) {
	return m.doc.TieRod.Engagement - m.length(p.car.TieRodLength(s)-m.base.TieRodLength(s)), nil
}

func (m *limitMeter) adjusterRange(p *posed, s solver.Side) (float64, error) {
	engaged, err := m.engaged(p, s)
	return room(m.doc.TieRod, engaged), err
}

// room is how far an adjuster can still be turned either way, the lesser of both: out to
// the least engagement, in to where it bottoms.
func room(rod *study.TieRod, engaged float64) float64 {
	left := engaged - rod.MinEngagement
	if rod.MaxEngagement > 0 {
		left = math.Min(left, rod.MaxEngagement-engaged)
	}
	return left
}

func (m *limitMeter) dragLength(p *posed) (float64, error) { return m.length(p.car.Rods().Drag), nil }

func (m *limitMeter) dragEngaged(p *posed) (float64, error) {
	return m.doc.DragLink.Engagement - m.length(p.car.Rods().Drag-m.base.Rods().Drag), nil
}

func (m *limitMeter) dragRange(p *posed) (float64, error) {
	engaged, err := m.dragEngaged(p)
	return room(m.doc.DragLink, engaged), err
}

func (m *limitMeter) armLength(p *posed, s solver.Side) (float64, error) {
	return m.length(p.car.SteeringArm(s)), nil
}

// armOffset is how far the ball was moved outboard of the arm's own line.
func (m *limitMeter) armOffset(p *posed, s solver.Side) (float64, error) {
	sum := 0.0
	for _, c := range p.car.Changes() {
		if c.Parameter.Key == "steeringArmOffset" && c.Sides.Includes(s) {
			sum += c.Value
		}
	}
	return m.length(sum), nil
}
