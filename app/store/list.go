package store

import (
	"cmp"
	"slices"
	"sort"
	"strings"
	"time"
)

// Entry is a study in a list.
type Entry struct {
	ID      ID
	Name    string
	Version Version // the one that counts
	Saved   time.Time
	Deleted bool // in the bin
	// Others are revisions that do not belong to the line of the one that counts: two
	// tabs saved at once.
	Others []*Revision
	// Problem says what is wrong with the study; nil where it can be opened.
	Problem error
}

// List returns all studies, by their names.
func (s *Store) List() ([]Entry, error) {
	ids, err := s.ids()
	if err != nil {
		return nil, err
	}
	list := make([]Entry, 0, len(ids))
	for _, id := range ids {
		e, err := s.entry(id)
		if err != nil {
			return nil, err
		}
		list = append(list, e)
	}
	sort.SliceStable(list, func(i, j int) bool {
		return strings.ToLower(list[i].Name) < strings.ToLower(list[j].Name)
	})
	return list, nil
}

// ids returns the studies of which there is a head or a revision.
func (s *Store) ids() ([]ID, error) {
	keys, err := s.storage.Keys()
	if err != nil {
		return nil, err
	}
	var ids []ID
	for _, key := range keys {
		if id, ok := strings.CutPrefix(key, headPrefix); ok {
			ids = append(ids, ID(id))
		} else if id, _, ok := splitRevisionKey(key); ok {
			ids = append(ids, id)
		}
	}
	slices.Sort(ids)
	return slices.Compact(ids), nil
}

func (s *Store) entry(id ID) (Entry, error) {
	list, err := s.revisions(id)
	if err != nil {
		return Entry{}, err
	}
	h, _, problem := s.head(id)
	e := Entry{ID: id, Name: h.Name, Version: h.Version, Deleted: h.Deleted, Problem: problem}
	if e.Version == (Version{}) && len(list) > 0 {
		e.Version = list[0].Version
	}
	line := ancestry(list, e.Version)
	for _, r := range list {
		switch {
		case r.Version == e.Version:
			e.Saved, e.Problem = r.Saved, cmp.Or(e.Problem, r.Problem)
		case !line[r.Version] && r.Problem == nil && !older(list, line, r):
			e.Others = append(e.Others, r)
		}
	}
	e.Name = cmp.Or(e.Name, "study without a name")
	return e, nil
}

// older reports whether r comes before the oldest that is left of the line, so that
// the line descends from it, for all that is known.
func older(list []*Revision, line map[Version]bool, r *Revision) bool {
	for _, other := range list {
		if line[other.Version] && other.Version.Number <= r.Version.Number {
			return false
		}
	}
	return true
}

// Duplicate keeps a copy of a study under a name that the list does not have yet.
func (s *Store) Duplicate(id ID) (ID, error) {
	l, err := s.Load(id)
	if err != nil {
		return "", err
	}
	d := *l.Document
	d.Name += " (copy)"
	copied, _, err := s.Create(&d, "copy")
	return copied, err
}

// Rename gives a study another name.
func (s *Store) Rename(id ID, name string) (Version, error) {
	l, err := s.Load(id)
	if err != nil {
		return Version{}, err
	}
	d := *l.Document
	d.Name = name
	return s.Save(id, l.Version, &d, "rename to "+name)
}
