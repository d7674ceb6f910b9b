package engine

import (
	"fmt"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// setScenarios sets the set-ups that the answer must serve.
func (s *searcher) setScenarios(*SearchOptions) error {
	list, err := s.scenarios()
	for i := range list {
		s.problem.Scenarios = append(s.problem.Scenarios, list[i].Scenario)
	}
	return err
}

// scenarios returns the set-ups of the study's search that count.
func (s *sweeper) scenarios() (list []setUp, err error) {
	if s.doc.Search == nil || len(s.doc.Search.Scenarios) == 0 {
		return nil, nil
	}
	base, err := s.byName(study.BaseName)
	if err != nil {
		return nil, err
	}
	err = s.counting(func(c *study.Scenario) error {
		next, err := s.scenario(c, base.axle)
		list = append(list, setUp{next, c.Hold != nil})
		return err
	})
	return list, err
}

// counting visits the set-ups of the study's search that count.
func (s *sweeper) counting(visit func(*study.Scenario) error) error {
	for i := range s.doc.Search.Scenarios {
		c := &s.doc.Search.Scenarios[i]
		if c.Counts() == 0 {
			continue
		}
		if err := visit(c); err != nil {
			return explain(err, "scenario "+scenarioName(c, i))
		}
	}
	return nil
}

func (s *sweeper) scenario(c *study.Scenario, base *solver.Axle) (out optimize.Scenario, err error) {
	out.Name, out.Weight = c.Name, c.Counts()
	if out.Changes, err = s.doc.SolverChanges(s.design, c.Changes); err != nil {
		return out, err
	}
	if out.Hold, err = study.Hold(c.Hold); err != nil {
		return out, err
	}
	out.From, err = s.attitude(studyAttitude(c.Attitude), base)
	return out, err
}

// scenarioName returns how messages call a scenario.
func scenarioName(c *study.Scenario, i int) string {
	if c.Name != "" {
		return fmt.Sprintf("%.60q", c.Name)
	}
	return fmt.Sprint(i + 1)
}
