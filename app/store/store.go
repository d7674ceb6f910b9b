package store

import (
	"encoding/hex"
	"io"
	"sort"
	"time"
)

// History is how many revisions of each study are kept at least, the one that counts
// included.
const History = 20

// Store keeps studies in a storage. It belongs to one goroutine.
type Store struct {
	storage Storage
	tab     Storage // what outlives a reload of this tab alone; nil for none
	now     func() time.Time
	random  io.Reader
	writer  string
}

// Open returns a store on a storage. Now tells the time, for the user's eyes only.
// Random is where the names of studies and of this writer come from; it must differ
// between tabs.
func Open(storage Storage, now func() time.Time, random io.Reader) *Store {
	s := &Store{storage: storage, now: now, random: random}
	s.writer = s.name()
	return s
}

// name returns a name that nothing has yet.
func (s *Store) name() string {
	b := make([]byte, 6)
	if _, err := io.ReadFull(s.random, b); err != nil {
		panic("store: the source of names ended: " + err.Error())
	}
	return hex.EncodeToString(b)
}

// revisions returns the revisions of a study, the latest first, those included that
// cannot be opened.
func (s *Store) revisions(id ID) ([]*Revision, error) {
	keys, err := s.storage.Keys()
	if err != nil {
		return nil, err
	}
	var list []*Revision
	for _, key := range keys {
		of, v, ok := splitRevisionKey(key)
		if !ok || of != id {
			continue
		}
		text, ok, err := s.storage.Get(key)
		if err != nil {
			return nil, err
		}
		if ok {
			list = append(list, parseRevision(v, text))
		}
	}
	sort.Slice(list, func(i, j int) bool { return list[j].Version.compare(list[i].Version) < 0 })
	return list, nil
}

// ancestry returns the versions that lead to v, v included, as far as they are kept.
func ancestry(list []*Revision, v Version) map[Version]bool {
	parents := map[Version]Version{}
	for _, r := range list {
		parents[r.Version] = r.Parent
	}
	line := map[Version]bool{}
	for v != (Version{}) && !line[v] {
		line[v] = true
		v = parents[v]
	}
	return line
}

// InTab has the store note what is open in a storage of this tab's own as well: a reload
// opens that again, whatever other tabs have opened since.
func (s *Store) InTab(tab Storage) { s.tab = tab }

// Current returns the study that was open last, in this tab or, where that is no longer
// kept, in any; "" for none.
func (s *Store) Current() ID {
	if s.tab != nil {
		id := ID(noted(s.tab, currentKey, "current"))
		if _, ok, err := s.storage.Get(headKey(id)); ok && err == nil {
			return id
		}
	}
	return ID(noted(s.storage, currentKey, "current"))
}

// SetCurrent notes which study is open.
func (s *Store) SetCurrent(id ID) error { return s.note(currentKey, "current", string(id)) }

// note keeps what is looked at. A tab that keeps nothing of its own does with what is
// kept for all.
func (s *Store) note(key, kind, body string) error {
	text := seal(kind, body)
	if s.tab != nil {
		_ = s.tab.Set(key, text)
	}
	return s.storage.Set(key, text)
}

// noted returns what a storage has as a note, "" where that is nothing that can be read.
func noted(from Storage, key, kind string) string {
	text, ok, err := from.Get(key)
	if err != nil || !ok {
		return ""
	}
	body, err := unseal(kind, text)
	if err != nil {
		return ""
	}
	return body
}
