package model

import (
	"fmt"
	"maps"
	"slices"

	"toewright/internal/study"
)

// MaxCandidates is how many candidates stand beside the base car: as many as can
// be told apart by colour, dash and marker.
const MaxCandidates = 8

// withCandidates adopts a copy of the document that differs only in its
// candidates, which is cheap enough for every frame of a drag.
func (s *Session) withCandidates(label, run string, list []study.Candidate) {
	next := *s.doc
	next.Candidates = list
	s.remember(label, run)
	s.doc, s.made, s.run = &next, Step{Label: label}, run
	s.cars = s.cars.again(&next)
}

// SetChange sets one parameter of a candidate (1 and up, as [Car.Index]) in file
// units or degrees. It returns an error for a candidate that is not there.
func (s *Session) SetChange(car int, key string, value float64, run string) error {
	if err := s.checkCandidate(car); err != nil {
		return err
	}
	list := slices.Clone(s.doc.Candidates)
	k := &list[car-1]
	k.Changes = maps.Clone(k.Changes)
	if k.Changes == nil {
		k.Changes = study.Changes{}
	}
	k.Changes[key] = value
	s.withCandidates("change "+s.cars.wordFor(key), run, list)
	return nil
}

// ClearChange takes a parameter back to that of the base car.
func (s *Session) ClearChange(car int, key string) error {
	if err := s.checkCandidate(car); err != nil {
		return err
	}
	list := slices.Clone(s.doc.Candidates)
	list[car-1].Changes = maps.Clone(list[car-1].Changes)
	delete(list[car-1].Changes, key)
	s.withCandidates("reset "+s.cars.wordFor(key), "", list)
	return nil
}

func (s *Session) checkCandidate(car int) error {
	if car < 1 || car > len(s.doc.Candidates) {
		return fmt.Errorf("model: there is no candidate %d; the base car itself does not change", car)
	}
	return nil
}

// AddCandidate adds a candidate at the end and returns its index. Its name is
// made to differ from the others.
func (s *Session) AddCandidate(k study.Candidate) (int, error) {
	if len(s.doc.Candidates) >= MaxCandidates {
		return 0, fmt.Errorf("model: there are %d candidates already: delete one first", MaxCandidates)
	}
	k.Name = s.freeName(k.Name)
	k.Changes = maps.Clone(k.Changes)
	s.withCandidates("add "+k.Name, "", append(slices.Clone(s.doc.Candidates), k))
	return len(s.doc.Candidates), nil
}

// Duplicate adds a copy of a car, the base car included, and returns its index.
func (s *Session) Duplicate(car int) (int, error) {
	if car == 0 {
		return s.AddCandidate(study.Candidate{Name: "candidate"})
	}
	if err := s.checkCandidate(car); err != nil {
		return 0, err
	}
	return s.AddCandidate(s.doc.Candidates[car-1])
}

// freeName returns name, or name with a number where it is taken.
func (s *Session) freeName(name string) string {
	if name == "" || name == study.BaseName {
		name = "candidate"
	}
	return free(name, func(name string) bool { return s.doc.Candidate(name) != nil })
}

// free returns name, or name with the first number by which it is not taken.
func free(name string, taken func(string) bool) string {
	out := name
	for i := 2; taken(out); i++ {
		out = fmt.Sprintf("%s %d", name, i)
	}
	return out
}

// Rename gives a candidate another name, made to differ from the others.
func (s *Session) Rename(car int, name string) error {
	if err := s.checkCandidate(car); err != nil {
		return err
	}
	list := slices.Clone(s.doc.Candidates)
	if list[car-1].Name == name {
		return nil
	}
	list[car-1].Name = s.freeName(name)
	label := "rename to " + list[car-1].Name
	if s.TargetCar() == car {
		return s.Edit(label, "", func(d *study.Document) { d.Candidates, d.Search.TargetOf = list, list[car-1].Name })
	}
	s.withCandidates(label, "", list)
	return nil
}

// Delete removes a candidate.
func (s *Session) Delete(car int) error {
	if err := s.checkCandidate(car); err != nil {
		return err
	}
	name := s.doc.Candidates[car-1].Name
	s.withCandidates("delete "+name, "", slices.Delete(slices.Clone(s.doc.Candidates), car-1, car))
	return nil
}

// Arrange puts the candidates into the order of a list of cars; those that are not in it
// keep their places. It returns where each stood before, by the indices of [Car].
func (s *Session) Arrange(list []*Car) (order []int, err error) {
	var named []int
	for _, car := range list {
		if car.Index == 0 {
			continue
		}
		if err := s.checkCandidate(car.Index); err != nil {
			return nil, err
		}
		named = append(named, car.Index)
	}
	next, taken := slices.Clone(s.doc.Candidates), 0
	for i := range next {
		from := i + 1
		if slices.Contains(named, from) {
			from = named[taken]
			taken++
		}
		next[i] = s.doc.Candidates[from-1]
		order = append(order, from)
	}
	s.withCandidates("order of the candidates", "", next)
	return order, nil
}

// SetPrice states what a candidate's parts cost; 0 is not stated.
func (s *Session) SetPrice(car int, price float64) error {
	return s.describe(car, "price of ", func(k *study.Candidate) { k.Price = price })
}

// SetNote states a note on a candidate.
func (s *Session) SetNote(car int, note string) error {
	return s.describe(car, "note on ", func(k *study.Candidate) { k.Note = note })
}

// describe changes what is said of a candidate, and nothing that is computed.
func (s *Session) describe(car int, label string, change func(*study.Candidate)) error {
	if err := s.checkCandidate(car); err != nil {
		return err
	}
	list := slices.Clone(s.doc.Candidates)
	change(&list[car-1])
	s.withCandidates(label+list[car-1].Name, "", list)
	return nil
}

// Hide hides a candidate from the pictures, or shows it again.
func (s *Session) Hide(car int, hidden bool) error {
	label := "show "
	if hidden {
		label = "hide "
	}
	return s.describe(car, label, func(k *study.Candidate) { k.Hidden = hidden })
}
