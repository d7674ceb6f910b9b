package store

import "strings"

// Place is what the reader was looking at: no part of any study, so that it has no
// revisions and nothing is lost with it.
type Place struct {
	Study ID     // "" for the demo that nobody has touched
	Panel string // key of the panel that was open
	Car   string // name of the selected car
}

// SetPlace notes the place that is looked at.
func (s *Store) SetPlace(p Place) error {
	return s.storage.Set(placeKey, seal("place", string(p.Study)+"\n"+p.Panel+"\n"+p.Car))
}

// Place returns the place that was noted last; an empty one where there is none that can
// be read.
func (s *Store) Place() Place {
	text, ok, err := s.storage.Get(placeKey)
	if err != nil || !ok {
		return Place{}
	}
	body, err := unseal("place", text)
	if err != nil {
		return Place{}
	}
	study, rest, _ := strings.Cut(body, "\n")
	panel, car, _ := strings.Cut(rest, "\n")
	return Place{ID(study), panel, car}
}
