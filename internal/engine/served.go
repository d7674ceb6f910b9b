package engine

import (
	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// Served says how one car serves the set-ups of the study's search and stands to
// its limits in each of them.
type Served struct {
	Candidate string           `json:"candidate"`
	Score     Number           `json:"score"` // over all set-ups, as the search combines them; none without any
	Scenarios []ScenarioResult `json:"scenarios"`
	Limits    []LimitResult    `json:"limits"`
}

// serving judges cars as a study's search would.
type serving struct {
	*setUps
	limits []servedLimit
}

// servedLimit is a limit of the study, or why it cannot be measured.
type servedLimit struct {
	l       *study.Limit
	limit   optimize.Limit
	problem error
}

// serving returns nil where the study has neither set-ups nor limits.
func (s *sweeper) serving() (*serving, error) {
	f := s.doc.Search
	if f == nil || len(f.Scenarios) == 0 && len(f.Limits) == 0 {
		return nil, nil
	}
	ups, err := s.studySetUps()
	if err != nil {
		return nil, err
	}
	out := &serving{setUps: ups}
	for i := range f.Limits {
		limit, err := s.limit(i)
		out.limits = append(out.limits, servedLimit{&f.Limits[i], limit, err})
	}
	return out, nil
}

// of returns how a car serves.
func (v *serving) of(c car) Served {
	out := Served{Candidate: c.name, Score: none, Scenarios: []ScenarioResult{}, Limits: []LimitResult{}}
	if len(v.list) == 0 {
		out.Limits = append(out.Limits, v.standing(&setUp{}, c.axle, nil)...)
		return out
	}
	out.Score, out.Scenarios = v.serve(c.axle.Changes(), c.axle.Hold())
	for i := range v.list {
		axle, err := v.assembleIn(&v.list[i], c.axle.Changes(), c.axle.Hold())
		out.Limits = append(out.Limits, v.standing(&v.list[i], axle, err)...)
	}
	return out
}

// standing returns how a car stands to each limit in a set-up, or err says why it cannot
// be assembled so.
func (v *serving) standing(up *setUp, axle *solver.Axle, err error) (out []LimitResult) {
	for i := range v.limits {
		k := &v.limits[i]
		var r LimitResult
		switch {
		case k.problem != nil:
			r = v.unmeasured(k.l, k.problem)
		case err != nil:
			r = v.stands(k.l, k.limit.Unbuilt(err))
		default:
			r = v.stands(k.l, k.limit.State(axle, up.From, v.ws))
		}
		r.Scenario = up.Name
		out = append(out, r)
	}
	return out
}

// Worst returns the set-up in which the toe change strays farthest from the target, by its
// peak; nil without set-ups, and where the car cannot serve one.
func (s *Served) Worst() *ScenarioResult {
	var worst *ScenarioResult
	for i := range s.Scenarios {
		up := &s.Scenarios[i]
		if !up.Peak.Valid() {
			return nil
		}
		if worst == nil || up.Peak > worst.Peak {
			worst = up
		}
	}
	return worst
}

// Tightest returns of each of n limits, which a list has in each set-up in turn, the one
// that is nearest to being broken or broken the farthest, the first of those alike; nil
// where the car can take no set-up.
func Tightest(limits []LimitResult, n int) []*LimitResult {
	out := make([]*LimitResult, n)
	for i := range limits {
		l := &limits[i]
		if k := i % n; out[k] == nil || out[k].Room()-l.Room() > sameRoom {
			out[k] = l
		}
	}
	return out
}

// sameRoom is by how much less room a limit must have to be the tighter one: what no table
// tells apart is alike.
const sameRoom = 1e-6
