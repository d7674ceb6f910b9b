package engine

import (
	"errors"
	"slices"

	"toewright/internal/study"
	"toewright/solver"
)

// together refuses a catalogue in which a part sets plain, for both sides, what a part of
// another slot sets for one: their combination would be no candidate. Parts that exclude
// each other may.
func (c *chooser) together() error {
	type given struct {
		key string
		by  *study.Part
	}
	seen := map[string][]given{} // by parameter
	for i := range c.doc.Catalogue {
		p := &c.doc.Catalogue[i]
		for key := range p.Changes {
			parameter, _, err := solver.FindParameter(c.design, key)
			if err != nil {
				return explain(err, "part "+p.Name)
			}
			for _, q := range seen[parameter.Key] {
				if q.key == key {
					continue
				}
				if err := c.pair(q.by, p); err != nil {
					return err
				}
			}
			seen[parameter.Key] = append(seen[parameter.Key], given{key, p})
		}
	}
	return nil
}

// pair refuses two parts of a combination that give a parameter both plain and by side.
func (c *chooser) pair(p, q *study.Part) error {
	if p.Slot == q.Slot || slices.Contains(p.Excludes, q.Name) || slices.Contains(q.Excludes, p.Name) {
		return nil
	}
	all := study.Changes{}
	c.combine(all, p.Changes)
	c.combine(all, q.Changes)
	_, err := c.doc.SolverChanges(c.design, all)
	var input *solver.InputError
	if !errors.As(err, &input) {
		return nil // either alone is well, so that it is of both together
	}
	return wrongf("catalogue", "parts %.60q of slot %.60q and %.60q of slot %.60q do not go together: %s %s, or let one exclude the other",
		p.Name, p.Slot, q.Name, q.Slot, input.Key, input.Problem)
}
