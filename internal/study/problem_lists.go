package study

import "fmt"

// candidates refuses changes and setpoints that the car does not have.
func (c *checker) candidates() *problem {
	for i, v := range c.Candidates {
		if p := c.setup(fmt.Sprintf("candidates.%d", i), v.Changes, v.Hold); p != nil {
			return p
		}
	}
	return nil
}

// setup checks changes with the setpoints that are held.
func (c *checker) setup(path string, changes Changes, hold []string) *problem {
	if p := c.changes(path+".changes", changes); p != nil {
		return p
	}
	return c.hold(path+".hold", hold)
}

// search refuses variables and scenarios that the car does not have.
func (c *checker) search() *problem {
	if c.Search == nil {
		return nil
	}
	for i, v := range c.Search.Variables {
		if p := c.parameter(fmt.Sprintf("search.variables.%d.parameter", i), v.Parameter); p != nil {
			return p
		}
	}
	for i, v := range c.Search.Scenarios {
		if p := c.setup(fmt.Sprintf("search.scenarios.%d", i), v.Changes, v.Hold); p != nil {
			return p
		}
	}
	return nil
}

// tolerances refuses parameters that the car does not have.
func (c *checker) tolerances() *problem {
	for i, v := range c.Tolerances {
		if p := c.parameter(fmt.Sprintf("tolerances.%d.parameter", i), v.Parameter); p != nil {
			return p
		}
	}
	return nil
}

// readings refuses set-ups that the car cannot have.
func (c *checker) readings() *problem {
	for path, r := range c.Runs() {
		if p := c.changes(path+".changes", r.Changes); p != nil {
			return p
		}
	}
	return nil
}

// series refuses cars that go by one name or none.
func (c *checker) series() *problem {
	seen := map[string]bool{"": true}
	for i, v := range c.Series {
		if seen[v.Car] {
			return problemf(fmt.Sprintf("series.%d.car", i), "%.60q is no name of its own; call each car of the series by another", v.Car)
		}
		seen[v.Car] = true
	}
	return nil
}

// nuisances are unknowns of a fit that are no parameters of the car: the errors
// of the travel's own zero, in file units, of the steering's centre, and what a gauge
// gains with travel. True are those that a prior frees; the last is free as the
// readings themselves say.
var nuisances = map[string]bool{"travelZero": true, "steerZero": true, "gaugeSlope": false}

// IsNuisance reports whether the key is an unknown of the measurement, not a
// parameter of the car.
func IsNuisance(key string) bool {
	_, ok := nuisances[key]
	return ok
}

// priors refuses parameters that the car does not have.
func (c *checker) priors() *problem {
	for i, v := range c.Priors {
		if nuisances[v.Parameter] {
			continue
		}
		if p := c.parameter(fmt.Sprintf("priors.%d.parameter", i), v.Parameter); p != nil {
			return p
		}
	}
	return nil
}

// advise refuses a parameter that the car does not have.
func (c *checker) advise() *problem {
	if c.Advise == nil {
		return nil
	}
	return c.parameter("advise.parameter", c.Advise.Parameter)
}

// catalogue refuses parts whose changes the car cannot have.
func (c *checker) catalogue() *problem {
	for i, v := range c.Catalogue {
		if p := c.changes(fmt.Sprintf("catalogue.%d.changes", i), v.Changes); p != nil {
			return p
		}
	}
	return nil
}
