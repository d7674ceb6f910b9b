package model

import (
	"slices"
	"strconv"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// AddPart adds a part to the catalogue.
func (s *Session) AddPart(part study.Part) error {
	return s.addParts("add a part", study.FromTyping, part)
}

// TakeParts adds the parts of a table to the catalogue in one step.
func (s *Session) TakeParts(parts []study.Part) error {
	return s.addParts("parts from a table", study.FromFile, parts...)
}

func (s *Session) addParts(label string, source study.Source, parts ...study.Part) error {
	return s.edit(label, "", func(d *study.Document) { d.Catalogue = append(d.Catalogue, parts...) }, s.from(source))
}

// SetPart changes a part of the catalogue.
func (s *Session) SetPart(i int, label string, change func(*study.Part)) error {
	return s.Edit(label, "", func(d *study.Document) { change(&d.Catalogue[i]) })
}

// RemovePart removes a part from the catalogue.
func (s *Session) RemovePart(i int) error {
	return s.Edit("remove a part", "", func(d *study.Document) { d.Catalogue = slices.Delete(d.Catalogue, i, i+1) })
}

// PriceText writes a price as it stands in a field: "" where none is stated.
func PriceText(price float64) string {
	if price == 0 {
		return ""
	}
	return strconv.FormatFloat(price, 'f', 2, 64)
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
	i, err := d.Session.AddCandidate(study.Candidate{Name: ChoiceName(c), Changes: c.Changes, Price: c.Price})
	if err == nil {
		d.Select(i)
	}
	return err
}
