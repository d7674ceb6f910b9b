package store

import (
	"errors"
	"fmt"

	"toewright/internal/study"
)

// Loaded is a study as it was opened.
type Loaded struct {
	Document *study.Document
	Version  Version
	// Notice tells the user what is not as it should be: the latest revision cannot
	// be opened and this is an earlier one. "" where all is well.
	Notice string
}

// ErrNone is what a study that is not kept is refused with.
var ErrNone = errors.New("there is no such study")

// Load opens the revision of a study that counts or, where that is damaged, the latest
// one before it that is whole.
func (s *Store) Load(id ID) (*Loaded, error) {
	list, err := s.revisions(id)
	if err != nil {
		return nil, err
	}
	h, ok, err := s.head(id)
	switch {
	case errors.Is(err, ErrNewer):
		return nil, err
	case errors.Is(err, ErrDamaged):
		return latest(list, "the note of which revision counts is damaged")
	case err != nil:
		return nil, err
	case !ok && len(list) == 0:
		return nil, ErrNone
	case !ok:
		return latest(list, "the first save did not come to its end")
	}
	return counting(list, h.Version)
}

// counting opens the revision v, or the latest whole one among those before it.
func counting(list []*Revision, v Version) (*Loaded, error) {
	why := "it is gone"
	for _, r := range list {
		if r.Version != v {
			continue
		}
		d, err := r.Document()
		if err == nil {
			return &Loaded{Document: d, Version: v}, nil
		}
		if errors.Is(err, ErrNewer) {
			return nil, err
		}
		why = err.Error()
	}
	return latest(list, fmt.Sprintf("revision %d cannot be opened, %s", v.Number, why))
}

// latest opens the latest revision that is whole. Why is what the user is told.
func latest(list []*Revision, why string) (*Loaded, error) {
	for _, r := range list {
		if d, err := r.Document(); err == nil {
			return &Loaded{d, r.Version, fmt.Sprintf("%s; this is revision %d", why, r.Version.Number)}, nil
		}
	}
	return nil, fmt.Errorf("no revision of the study can be opened: %s; nothing was removed", why)
}

// LoadRevision opens one revision of a study.
func (s *Store) LoadRevision(id ID, v Version) (*study.Document, error) {
	text, ok, err := s.storage.Get(revisionKey(id, v))
	if err != nil {
		return nil, err
	}
	if !ok {
		return nil, ErrNone
	}
	return parseRevision(v, text).Document()
}

// History returns the revisions of a study, the latest first.
func (s *Store) History(id ID) ([]*Revision, error) { return s.revisions(id) }
