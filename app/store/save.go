package store

import (
	"errors"
	"fmt"

	"toewright/internal/study"
)

// ConflictError says that another tab has saved the study since this one read it.
type ConflictError struct{ Theirs Version }

func (e *ConflictError) Error() string {
	return fmt.Sprintf("another tab has saved this study since, as revision %d", e.Theirs.Number)
}

// Create keeps a new study.
func (s *Store) Create(d *study.Document, label string) (ID, Version, error) {
	id := ID(s.name())
	v, err := s.write(id, nil, Version{}, d, label)
	return id, v, err
}

// Save keeps a study as a new revision, made from the version parent. Where another
// version counts by now it keeps nothing and returns a [*ConflictError]; where the
// storage is full, also after old revisions of this study were given up, an
// [ErrFull]. A study that is in the bin comes out of it.
func (s *Store) Save(id ID, parent Version, d *study.Document, label string) (Version, error) {
	h, ok, err := s.head(id)
	switch {
	case errors.Is(err, ErrDamaged):
		if err := s.putAside(id); err != nil {
			return Version{}, err
		}
	case err != nil:
		return Version{}, err
	}
	list, err := s.revisions(id)
	if err != nil {
		return Version{}, err
	}
	if ok && h.Version != (Version{}) && h.Version != parent && !lost(list, h.Version) {
		return Version{}, &ConflictError{h.Version}
	}
	return s.write(id, list, parent, d, label)
}

// lost reports whether a version is gone or damaged. One that a newer program wrote
// is not.
func lost(list []*Revision, v Version) bool {
	for _, r := range list {
		if r.Version == v {
			_, err := r.Document()
			return errors.Is(err, ErrDamaged)
		}
	}
	return true
}

// write keeps a revision and makes it count. The list has all others of the study,
// the latest first.
func (s *Store) write(id ID, list []*Revision, parent Version, d *study.Document, label string) (Version, error) {
	text, err := study.Encode(d)
	if err != nil {
		return Version{}, err
	}
	r := &Revision{Version: Version{parent.Number + 1, s.writer}, Parent: parent, Label: label, Saved: s.now(), packed: pack(text)}
	if len(list) > 0 {
		r.Version.Number = max(r.Version.Number, list[0].Version.Number+1)
	}
	kept, err := r.text()
	if err != nil {
		return Version{}, err
	}
	err = s.withRoom(id, list, parent, func() error { return s.storage.Set(revisionKey(id, r.Version), kept) })
	if err != nil {
		return Version{}, err
	}
	h := head{Version: r.Version, Name: d.Name}
	err = s.withRoom(id, list, parent, func() error { return s.setHead(id, h) })
	if err != nil {
		return Version{}, err
	}
	return r.Version, s.prune(id, append([]*Revision{r}, list...), r.Version, History)
}

// putAside keeps what is left of a damaged head under another key, and takes it away.
func (s *Store) putAside(id ID) error {
	text, _, err := s.storage.Get(headKey(id))
	if err != nil {
		return err
	}
	key, err := s.freeAside(id)
	if err != nil {
		return err
	}
	if err := s.storage.Set(key, text); err != nil {
		return err
	}
	return s.storage.Remove(headKey(id))
}

func (s *Store) freeAside(id ID) (string, error) {
	for n := 1; ; n++ {
		key := fmt.Sprintf("%s%s.%d", asidePrefix, id, n)
		if _, taken, err := s.storage.Get(key); err != nil || !taken {
			return key, err
		}
	}
}
