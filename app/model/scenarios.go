package model

import (
	"fmt"
	"slices"

	"toewright/internal/study"
	"toewright/solver"
)

// AddScenarios adds set-ups that the answer of the search must serve, in one step.
func (s *Session) AddScenarios(list []study.Scenario) error {
	return s.EditSearch("add set-ups", "", func(f *study.Search) { f.Scenarios = append(f.Scenarios, list...) })
}

// RemoveScenario takes a set-up out of the search.
func (s *Session) RemoveScenario(i int) error {
	return s.EditSearch("remove a set-up", "", func(f *study.Search) {
		f.Scenarios = slices.Delete(f.Scenarios, i, i+1)
	})
}

// SetScenario changes one set-up of the search.
func (s *Session) SetScenario(i int, label string, change func(*study.Scenario)) error {
	return s.EditSearch(label, "", func(f *study.Search) { change(&f.Scenarios[i]) })
}

// SetUpKind is a set-up, or several, to begin with.
type SetUpKind struct {
	Key, Label string
	list       func(*Session) []study.Scenario
}

// SetUpKinds are the set-ups that a list to choose from offers.
var SetUpKinds = []SetUpKind{
	{"own", "one of your own", (*Session).ownSetUp},
	{"stands", "as it stands", one(study.Scenario{Name: "as it stands"})},
	{"caster", "a degree more and less caster", (*Session).casterSetUps},
	{"low", "an inch lower", (*Session).lowSetUp},
	{"brake", "braking: an inch of dive", (*Session).brakingSetUp},
	{"all", "more caster, an inch lower and braking, in one", (*Session).togetherSetUp},
}

func one(k study.Scenario) func(*Session) []study.Scenario {
	return func(*Session) []study.Scenario { return []study.Scenario{k} }
}

// AddSetUps adds the set-ups of a kind.
func (s *Session) AddSetUps(kind *SetUpKind) error { return s.AddScenarios(kind.list(s)) }

// UsualScenarios returns set-ups that one part often has to serve: the car as it
// stands, with a degree more and less caster, and an inch lower.
func (s *Session) UsualScenarios() []study.Scenario {
	return slices.Concat([]study.Scenario{{Name: "as it stands"}}, s.casterSetUps(), s.lowSetUp())
}

// ownSetUp is one that changes nothing yet.
func (s *Session) ownSetUp() []study.Scenario {
	return []study.Scenario{{Name: fmt.Sprintf("set-up %d", len(SearchOf(s.doc, s.cars.Design).Scenarios)+1)}}
}

// caster returns the base car's; false where it has none.
func (s *Session) caster() (degrees float64, ok bool) {
	base := s.cars.Base()
	if base == nil || base.Err != nil {
		return 0, false
	}
	rest := base.Rest(solver.Left)
	if rest == nil {
		return 0, false
	}
	return round(rest.Caster.Degrees()), true
}

func (s *Session) casterSetUps() []study.Scenario {
	caster, ok := s.caster()
	if !ok {
		return nil
	}
	return []study.Scenario{
		{Name: "a degree more caster", Changes: study.Changes{"caster": caster + 1}},
		{Name: "a degree less caster", Changes: study.Changes{"caster": caster - 1}},
	}
}

// inch returns an inch in file units.
func (s *Session) inch() float64 { return s.doc.Units.FromMillimetres(study.Inch.Millimetres(1)) }

func (s *Session) lowSetUp() []study.Scenario {
	return []study.Scenario{{Name: "an inch lower", Changes: study.Changes{"rideHeight": -s.inch()}}}
}

// brakingSetUp is the dive of the front, as travel of its wheels.
func (s *Session) brakingSetUp() []study.Scenario {
	return []study.Scenario{{Name: "braking", Attitude: &study.Attitude{Heave: s.inch()}}}
}

// togetherSetUp changes several settings at once.
func (s *Session) togetherSetUp() []study.Scenario {
	k := study.Scenario{Name: "low, braking", Changes: s.lowSetUp()[0].Changes, Attitude: s.brakingSetUp()[0].Attitude}
	if caster, ok := s.caster(); ok {
		k.Name, k.Changes["caster"] = "more caster, low, braking", caster+1
	}
	return []study.Scenario{k}
}
