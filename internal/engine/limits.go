package engine

import (
	"fmt"
	"math"

	"toewright/internal/study"
	"toewright/optimize"
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
	// At is where a limit at lock or under load is nearest to being broken, and the
	// position without a value of one that is looked at through the travel; nil of others.
	At *LimitAt `json:"at,omitzero"`
	// Problem says why there is no value, empty where there is one.
	Problem string `json:"problem,omitzero"`
	// NoCar says that there is none of any car: see [LimitResult.Unmeasured].
	NoCar bool `json:"unmeasured,omitzero"`
}

// Room is [optimize.Limit.Room] in the limit's unit, least of all where there is no value.
func (l *LimitResult) Room() float64 {
	if !l.Value.Valid() {
		return math.Inf(-1)
	}
	bounds := optimize.Limit{Min: l.Min.or(math.Inf(-1)), Max: l.Max.or(math.Inf(1))}
	return bounds.Room(float64(l.Value))
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

// stands returns how a car stands to a limit of the study.
func (s *sweeper) stands(l *study.Limit, st optimize.LimitState) LimitResult {
	out := s.stating(l)
	out.Scenario, out.Value, out.Held = st.Scenario, Number(st.Value), st.Held
	switch k, _ := study.KindOfLimit(l.Result); {
	case k.Travels && st.At != nil && (l.At == study.AtLock || st.Err != nil):
		out.At = s.limitAt(st.At)
	case k.Loaded && st.At != nil && st.Err == nil:
		c := &s.doc.Loads[st.At.Case]
		out.At = &LimitAt{Side: st.At.Side.String(), Travel: c.Travel, Steer: c.Steer, Case: c.Name}
	}
	if st.Err != nil {
		out.Problem = s.doc.Units.Sentence(bare(st.Err))
	}
	if out.At != nil && st.Err != nil {
		out.Problem = out.Where(s.sayTravel)
	}
	return out
}

// unmeasured returns how every car stands to a limit that cannot be measured on any,
// and why.
func (s *sweeper) unmeasured(l *study.Limit, why error) LimitResult {
	out := s.stating(l)
	out.NoCar, out.Problem = true, s.doc.Units.Sentence(bare(why))
	return out
}

// stating returns what a limit of the study states, without a value.
func (s *sweeper) stating(l *study.Limit) LimitResult {
	b := s.doc.Bounded(l)
	out := LimitResult{Name: LimitName(l), Value: none, Min: bound(b.Min), Max: bound(b.Max)}
	if k, ok := study.KindOfLimit(l.Result); ok {
		out.Unit = k.Unit.Symbol(s.doc)
	}
	return out
}

// Unmeasured reports whether the limit cannot be measured on any car, since the study
// lacks what it needs: Problem says what.
func (l *LimitResult) Unmeasured() bool { return l.NoCar }

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
	l := s.doc.Bounded(&s.doc.Search.Limits[i])
	k, ok := study.KindOfLimit(l.Result)
	if !ok {
		return optimize.Limit{}, wrongf("search.limits", "%.40q is not a result that can be limited", l.Result)
	}
	if err := s.doc.ReadyToLimit(i); err != nil {
		return optimize.Limit{}, explain(err, "")
	}
	m, err := s.limitMeter(&l)
	if err != nil {
		return optimize.Limit{}, err
	}
	out := optimize.Limit{Name: LimitName(&l), Min: math.Inf(-1), Max: math.Inf(1), Scale: k.Scale, Range: m.measure}
	if m.ranged.spot != nil {
		out.Spot, out.OneWheel = m.spot, m.ranged.oneWheel
	}
	if m.ranged.slopes != nil {
		out.Slopes = m.slopes
	}
	if k.Unit == study.LimitLength {
		out.Scale = s.doc.Units.FromMillimetres(k.Scale)
	}
	if l.Min != nil {
		out.Min = *l.Min
	}
	if l.Max != nil {
		out.Max = *l.Max
	}
	return out, nil
}

// LimitName names a limit as results do.
func LimitName(l *study.Limit) string {
	name := string(l.Result)
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
