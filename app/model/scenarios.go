package model

import (
	"slices"

	"toewright/internal/study"
	"toewright/solver"
)

// AddScenario adds a set-up that the answer of the search must serve.
func (s *Session) AddScenario(name string, changes study.Changes) error {
	return s.AddScenarios([]study.Scenario{{Name: name, Changes: changes}})
}

// AddScenarios adds several set-ups in one step.
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

// UsualScenarios returns set-ups that one part often has to serve: the car as it
// stands, with a degree more and less caster, and an inch lower.
func (s *Session) UsualScenarios() []study.Scenario {
	base := s.cars.Base()
	if base == nil || base.Err != nil {
		return nil
	}
	list := []study.Scenario{{Name: "as it stands"}}
	rest := base.Rest(solver.Left)
	if rest == nil {
		return list
	}
	caster := round(rest.Caster.Degrees())
	for _, by := range []float64{1, -1} {
		list = append(list, study.Scenario{Name: scenarioName("caster", by), Changes: study.Changes{"caster": caster + by}})
	}
	const inch = 25.4
	return append(list, study.Scenario{Name: "an inch lower", Changes: study.Changes{"rideHeight": s.doc.Units.FromMillimetres(-inch)}})
}

func scenarioName(what string, by float64) string {
	if by > 0 {
		return "a degree more " + what
	}
	return "a degree less " + what
}
