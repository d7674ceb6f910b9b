package store

import (
	"cmp"
	"strings"
)

// Place is what the reader was looking at: no part of any study, so that it has no
// revisions and nothing is lost with it.
type Place struct {
	Study ID     // "" for the demo that nobody has touched
	Panel string // key of the panel that was open
	Car   string // name of the selected car
	Order string // of the comparison; "" is that of the study
}

// SetPlace notes the place that is looked at.
func (s *Store) SetPlace(p Place) error {
	return s.note(placeKey, "place", string(p.Study)+"\n"+p.Panel+" "+p.Order+"\n"+p.Car)
}

// Place returns the place that was noted last, in this tab or else in any; an empty one
// where there is none that can be read.
func (s *Store) Place() Place {
	body := noted(s.storage, placeKey, "place")
	if s.tab != nil {
		body = cmp.Or(noted(s.tab, placeKey, "place"), body)
	}
	study, rest, _ := strings.Cut(body, "\n")
	panel, car, _ := strings.Cut(rest, "\n")
	panel, order, _ := strings.Cut(panel, " ")
	return Place{ID(study), panel, car, order}
}
