package engine

import (
	"fmt"
	"math"
	"slices"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// LimitResult is how a car stands to one of the study's limits.
type LimitResult struct {
	Name     string `json:"name"`
	Unit     string `json:"unit"` // "mm", "in", "deg", "%" or "" of a ratio
	Scenario string `json:"scenario,omitzero"`
	Value    Number `json:"value"`
	Min      Number `json:"min"` // none where there is no such bound
	Max      Number `json:"max"`
	Held     bool   `json:"held"`
	// At is where a limit at lock is nearest to being broken, nil of others.
	At *LimitAt `json:"at,omitzero"`
	// Problem says why the limit cannot be measured, empty where it can.
	Problem string `json:"problem,omitzero"`
}

// Room returns how far the value may still go before the limit is broken, in its
// unit: negative where it is, and least of all where there is no value.
func (l *LimitResult) Room() float64 {
	room := math.Inf(1)
	if l.Min.Valid() {
		room = math.Min(room, float64(l.Value-l.Min))
	}
	if l.Max.Valid() {
		room = math.Min(room, float64(l.Max-l.Value))
	}
	if !l.Value.Valid() {
		return math.Inf(-1)
	}
	return room
}

// setLimits sets the limits that the answer must hold.
func (s *searcher) setLimits(*SearchOptions) (err error) {
	s.problem.Limits, err = s.limits()
	return err
}

// limitResults returns how the answer stands to the limits.
func (s *searcher) limitResults(states []optimize.LimitState) []LimitResult {
	var out []LimitResult
	for i, st := range states {
		out = append(out, s.stands(&s.doc.Search.Limits[i%len(s.doc.Search.Limits)], st))
	}
	return out
}

// conflicting names the limits that are broken, each once. A search that can hold
// none of two limits ends half way between both.
func conflicting(list []LimitResult) (names []string) {
	for i := range list {
		if l := &list[i]; !l.Held && !slices.Contains(names, l.Name) {
			names = append(names, l.Name)
		}
	}
	return names
}

// stands returns how a car stands to a limit of the study.
func (s *sweeper) stands(l *study.Limit, st optimize.LimitState) LimitResult {
	b := s.doc.Bounded(l)
	out := LimitResult{
		Name: st.Name, Unit: s.unit(limitResults[l.Result].unit), Scenario: st.Scenario,
		Value: Number(st.Value), Min: bound(b.Min), Max: bound(b.Max), Held: st.Held,
		At: s.limitAt(st.At),
	}
	if out.At != nil && !out.Value.Valid() {
		out.Problem = out.Where(s.sayTravel)
	}
	return out
}

// unmeasured returns how every car stands to a limit that cannot be measured on any,
// and why.
func (s *sweeper) unmeasured(l *study.Limit, why error) LimitResult {
	b := s.doc.Bounded(l)
	return LimitResult{
		Name: limitName(l), Unit: s.unit(limitResults[l.Result].unit), Value: none,
		Min: bound(b.Min), Max: bound(b.Max), Problem: bare(why),
	}
}

// Unmeasured reports whether the limit cannot be measured on any car, since the study
// lacks what it needs: Problem says what.
func (l *LimitResult) Unmeasured() bool { return l.Problem != "" && l.At == nil }

// bound returns a bound of the study, none where there is no such bound.
func bound(x *float64) Number {
	if x == nil {
		return none
	}
	return Number(*x)
}

// limit turns limit i of the study's search into one of package optimize, in the
// file's units and degrees.
func (s *sweeper) limit(i int) (optimize.Limit, error) {
	l := &s.doc.Search.Limits[i]
	r, ok := limitResults[l.Result]
	if !ok {
		return optimize.Limit{}, wrongf("search.limits", "%.40q is no result that can be limited", l.Result)
	}
	if err := s.doc.ReadyToLimit(i); err != nil {
		return optimize.Limit{}, explain(err, "")
	}
	whole := s.doc.Bounded(l)
	l = &whole
	m := &limitMeter{sweeper: s, l: l, sides: solver.Sides[:], steers: s.limitSteers(l)}
	switch l.Side {
	case study.Left:
		m.sides = solver.Sides[:1]
	case study.Right:
		m.sides = solver.Sides[1:]
	}
	if err := m.ready(); err != nil {
		return optimize.Limit{}, err
	}
	out := optimize.Limit{Name: limitName(l), Min: math.Inf(-1), Max: math.Inf(1), Scale: r.scale}
	if r.unit == lengthUnit {
		out.Scale = s.doc.Units.FromMillimetres(r.scale)
	}
	if l.Min != nil {
		out.Min = *l.Min
	}
	if l.Max != nil {
		out.Max = *l.Max
	}
	switch {
	case r.through == nil:
		out.Of = func(car *solver.Axle, ws *solver.Workspace) float64 { return r.of(m, car, ws) }
		return out, nil
	case m.atLock():
		out.Where = func(car *solver.Axle, ws *solver.Workspace) optimize.LimitPlace { return m.where(r.through, car, ws) }
	}
	out.Of = func(car *solver.Axle, ws *solver.Workspace) float64 { return r.through(m, car, ws).value }
	return out, nil
}

// limitName names a limit for people.
func limitName(l *study.Limit) string {
	name := l.Result
	if l.Result == study.Clearance {
		name = fmt.Sprintf("clearance of %s%s", l.Of, clearFrom(l))
	}
	if l.Side != "" {
		name += " " + string(l.Side)
	}
	if l.At == study.AtLock {
		name += " at lock"
	}
	return name
}

// clearFrom says from what a clearance is.
func clearFrom(l *study.Limit) string {
	switch {
	case l.Plane != nil:
		return " from plane"
	case l.Rim != nil:
		return " from rim"
	case l.Link != nil:
		return fmt.Sprintf(" from %s-%s", l.Link.From, l.Link.To)
	}
	return ""
}

// limitUnit is what a result is measured in.
type limitUnit uint8

const (
	angleUnit limitUnit = iota
	lengthUnit
	percentUnit
	ratioUnit
)

func (s *sweeper) unit(u limitUnit) string {
	switch u {
	case angleUnit:
		return "deg"
	case lengthUnit:
		return string(s.doc.Units)
	case percentUnit:
		return "%"
	}
	return ""
}

// limitResult is a result that can be limited: its unit, the difference that
// matters (in deg, mm, % or one), and how it is measured.
type limitResult struct {
	unit  limitUnit
	scale float64
	of    func(*limitMeter, *solver.Axle, *solver.Workspace) float64
	// through measures, in place of of, what is looked at through the travel.
	through func(*limitMeter, *solver.Axle, *solver.Workspace) extremum
}

var limitResults = map[string]limitResult{
	"innerBallAngle":    {unit: angleUnit, scale: 1, through: (*limitMeter).innerBall},
	"outerBallAngle":    {unit: angleUnit, scale: 1, through: (*limitMeter).outerBall},
	"threadEngagement":  {unit: lengthUnit, scale: 1, of: (*limitMeter).engagement},
	"adjusterRange":     {unit: lengthUnit, scale: 1, of: (*limitMeter).adjusterRange},
	"tieRodLength":      {unit: lengthUnit, scale: 1, of: (*limitMeter).tieRodLength},
	"steeringArmLength": {unit: lengthUnit, scale: 1, of: (*limitMeter).armLength},
	"steeringArmOffset": {unit: lengthUnit, scale: 1, of: (*limitMeter).armOffset},
	"steeringRatio":     {unit: ratioUnit, scale: 0.1, of: (*limitMeter).steeringRatio},
	"turningCircle":     {unit: lengthUnit, scale: 50, of: (*limitMeter).circle},
	"ackermann":         {unit: percentUnit, scale: 1, of: (*limitMeter).ackermann},
	"toeOutOnTurns":     {unit: angleUnit, scale: 0.1, of: (*limitMeter).toeOut},
	study.Clearance:     {unit: lengthUnit, scale: 1, through: (*limitMeter).clearance},
}

// limitMeter measures one limited result of cars.
type limitMeter struct {
	*sweeper
	l     *study.Limit
	sides []solver.Side
	// steers are the steering inputs at which what is looked at through the travel is.
	steers []float64
	base   *solver.Axle // the car as measured, for what is counted from it
}

// ready returns an error that names what the study lacks for the limit.
func (m *limitMeter) ready() error {
	base, err := m.byName(study.BaseName)
	if err != nil {
		return err
	}
	m.base = base.axle
	lacks := func(key, what string) error {
		return wrongf(key, "is missing: the limit on %s needs %s", m.l.Result, what)
	}
	if l := m.l.Link; l != nil {
		for _, name := range [2]string{l.From, l.To} {
			if m.hardpoint(name) < 0 {
				return wrongf("search.limits", "link: a %s has no point called %.40q", m.design.Kind.Name, name)
			}
		}
	}
	rod, gear := m.doc.TieRod, m.doc.Steering
	switch m.l.Result {
	case "threadEngagement", "adjusterRange":
		if rod == nil || rod.Engagement == 0 {
			return lacks("tieRod.engagement", "the thread engaged on the car as measured")
		}
	case "steeringRatio":
		if gear == nil || gear.PerTurn == 0 {
			return lacks("steering.perTurn", "the input per turn of the steering wheel")
		}
	case "turningCircle":
		if gear == nil || gear.Lock == 0 {
			return lacks("steering.lock", "the most steering input")
		}
	}
	if m.l.Result == "turningCircle" || m.l.Result == "ackermann" {
		if m.doc.Vehicle.Wheelbase == 0 {
			return lacks("vehicle.wheelbase", "the wheelbase")
		}
	}
	return nil
}

// worst returns the least of what is measured on each side, or with most the
// largest; NaN if there is none.
func (m *limitMeter) worst(most bool, of func(solver.Side) float64) float64 {
	out := math.NaN()
	for _, side := range m.sides {
		v := of(side)
		if math.IsNaN(out) || most && v > out || !most && v < out {
			out = v
		}
	}
	return out
}

// extreme returns the side's value nearest to the bound that the limit states.
func (m *limitMeter) extreme(of func(solver.Side) float64) float64 {
	return m.worst(m.l.Min == nil, of)
}

func (m *limitMeter) tieRodLength(car *solver.Axle, _ *solver.Workspace) float64 {
	return m.extreme(func(s solver.Side) float64 { return m.length(car.TieRodLength(s)) })
}

// engagement is the thread left in the adjuster: a rod grows by being screwed out.
func (m *limitMeter) engagement(car *solver.Axle, _ *solver.Workspace) float64 {
	return m.extreme(func(s solver.Side) float64 { return m.engaged(car, s) })
}

func (m *limitMeter) engaged(car *solver.Axle, s solver.Side) float64 {
	return m.doc.TieRod.Engagement - m.length(car.TieRodLength(s)-m.base.TieRodLength(s))
}

// adjusterRange is how far the adjuster can still be turned either way, the lesser
// of both: out to the least engagement, in to where it bottoms.
func (m *limitMeter) adjusterRange(car *solver.Axle, _ *solver.Workspace) float64 {
	rod := m.doc.TieRod
	return m.worst(false, func(s solver.Side) float64 {
		engaged := m.engaged(car, s)
		left := engaged - rod.MinEngagement
		if rod.MaxEngagement > 0 {
			left = math.Min(left, rod.MaxEngagement-engaged)
		}
		return left
	})
}

func (m *limitMeter) armLength(car *solver.Axle, _ *solver.Workspace) float64 {
	return m.extreme(func(s solver.Side) float64 { return m.length(car.SteeringArm(s)) })
}

// armOffset is how far the ball was moved outboard of the arm's own line.
func (m *limitMeter) armOffset(car *solver.Axle, _ *solver.Workspace) float64 {
	return m.extreme(func(s solver.Side) float64 {
		sum := 0.0
		for _, c := range car.Changes() {
			if c.Parameter.Key == "steeringArmOffset" && c.Sides.Includes(s) {
				sum += c.Value
			}
		}
		return m.length(sum)
	})
}
