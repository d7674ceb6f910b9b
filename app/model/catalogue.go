package model

import (
	"slices"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// AddParts adds parts to the catalogue in one step.
func (s *Session) AddParts(parts []study.Part) error {
	return s.Edit("add parts", "", func(d *study.Document) { d.Catalogue = append(d.Catalogue, parts...) })
}

// SetPart changes a part of the catalogue.
func (s *Session) SetPart(i int, label string, change func(*study.Part)) error {
	return s.Edit(label, "", func(d *study.Document) { change(&d.Catalogue[i]) })
}

// RemovePart removes a part from the catalogue.
func (s *Session) RemovePart(i int) error {
	return s.Edit("remove a part", "", func(d *study.Document) { d.Catalogue = slices.Delete(d.Catalogue, i, i+1) })
}

// ChoiceName names a choice of parts by them.
func ChoiceName(c *engine.Choice) string {
	if len(c.Parts) == 0 {
		return "as it stands"
	}
	name := ""
	for i, p := range c.Parts {
		if i > 0 {
			name += " + "
		}
		name += p.Name
	}
	return name
}

// Choose makes a choice of parts a candidate and selects it.
func (d *Desk) Choose(c *engine.Choice) error {
	i, err := d.Session.AddCandidate(study.Candidate{Name: ChoiceName(c), Changes: c.Changes})
	if err == nil {
		d.Select(i)
	}
	return err
}
