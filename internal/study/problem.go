package study

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"toewright/internal/strictjson"
	"toewright/solver"
)

// problem is a reason why a document cannot be used: the path of a value and what
// is wrong with it.
type problem struct{ path, message string }

// problemf makes a problem.
func problemf(path, format string, args ...any) *problem {
	return &problem{path, fmt.Sprintf(format, args...)}
}

// err returns the problem as an error of the file, nil for no problem.
func (p *problem) err() error {
	if p == nil {
		return nil
	}
	return &strictjson.Error{Path: p.path, Message: p.message}
}

// first returns the first problem that a list of looks finds, or nil.
func first(looks ...func() *problem) *problem {
	for _, look := range looks {
		if p := look(); p != nil {
			return p
		}
	}
	return nil
}

// firstProblem returns what keeps a document of the right form from meaning
// anything, or nil: steering keys that do not fit the gear, parameters and
// setpoints that the car does not have. What only keeps one job from running is
// left to [Document.ReadyToSweep] and its kin, so that a study that is being
// worked on can always be kept.
func (d *Document) firstProblem() *problem {
	if p := first(d.steeringProblem, d.adjusterProblem, d.tieRodProblem, d.measuredProblem, d.armProblem, d.sourceProblem); p != nil {
		return p
	}
	design, err := d.Design()
	if err != nil {
		return problemf("suspension", "%s", d.Units.Sentence(reason(err)))
	}
	c := &checker{Document: d, design: design, known: map[string]string{}}
	return first(c.candidates, c.search, c.tolerances, c.readings, c.series, c.priors, c.advise, c.catalogue, c.stiffness)
}

// steeringProblem refuses keys that do not fit the gear.
func (d *Document) steeringProblem() *problem {
	if d.Steering == nil {
		return nil
	}
	kind, err := solver.KindByName(d.Suspension.Type)
	if err != nil {
		return problemf("suspension.type", "%s", reason(err))
	}
	if key, message := d.Steering.problem(!isAxle(kind)); key != "" {
		return problemf("steering."+key, "%s", message)
	}
	return nil
}

// adjusterProblem refuses a part that takes up camber and caster on other kinds
// of suspension only.
func (d *Document) adjusterProblem() *problem {
	kind, err := solver.KindByName(d.Suspension.Type)
	if err != nil || d.Suspension.Adjuster == "" {
		return nil
	}
	var keys []string
	for _, a := range kind.Adjusters() {
		if a.Key == d.Suspension.Adjuster {
			return nil
		}
		keys = append(keys, a.Key)
	}
	return problemf("suspension.adjuster", "%.40q is none of a %s, want one of %s", d.Suspension.Adjuster, kind.Name, strings.Join(keys, ", "))
}

// checker looks for problems that need the registry of parameters.
type checker struct {
	*Document
	design *solver.Design
	known  map[string]string // known maps keys that were looked up to what is wrong with them.
}

// parameter refuses a key that is not a parameter of the car.
func (c *checker) parameter(path, key string) *problem {
	wrong, ok := c.known[key]
	if !ok {
		if _, _, err := solver.FindParameter(c.design, key); err != nil {
			wrong = reason(err)
		}
		c.known[key] = wrong
	}
	if wrong != "" {
		return problemf(path, "%s", wrong)
	}
	return nil
}

// changes refuses keys that are no parameters of the car, the first by the alphabet.
func (c *checker) changes(path string, changes Changes) *problem {
	for _, key := range slices.Sorted(maps.Keys(changes)) {
		if p := c.parameter(path+"."+key, key); p != nil {
			return p
		}
	}
	return nil
}

// hold refuses names that are no setpoints.
func (c *checker) hold(path string, names []string) *problem {
	for i, name := range names {
		if !slices.Contains(setpoints, name) {
			return problemf(fmt.Sprintf("%s.%d", path, i), `%.40q is not a setpoint, want "toe", "camber" or "caster"`, name)
		}
	}
	return nil
}
