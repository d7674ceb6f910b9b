package store

import (
	"errors"
	"slices"
	"strings"
)

// Copy is a second place for what is kept, on disk. Browsers write localStorage there up
// to a minute after the page was told that it is kept; a browser that is killed meanwhile
// loses it. Both calls answer later, by the function that they are given.
type Copy interface {
	// Read hands over all texts by their keys.
	Read(done func(map[string]string, error))
	// Write makes changes and answers when they are on disk, all or none of them.
	Write(changes []Change, done func(error))
}

// Change is one of a text that is kept.
type Change struct {
	Key, Text string
	Gone      bool // removed rather than set to Text
}

// Noted is a storage that notes what was changed in it.
type Noted struct {
	Storage
	changes []Change
}

// Set implements [Storage].
func (n *Noted) Set(key, text string) error {
	err := n.Storage.Set(key, text)
	if err == nil {
		n.changes = append(n.changes, Change{Key: key, Text: text})
	}
	return err
}

// Remove implements [Storage].
func (n *Noted) Remove(key string) error {
	err := n.Storage.Remove(key)
	if err == nil {
		n.changes = append(n.changes, Change{Key: key, Gone: true})
	}
	return err
}

// Take returns the changes since it was called last.
func (n *Noted) Take() []Change {
	taken := n.changes
	n.changes = nil
	return taken
}

// Recover brings back to a storage what a copy has of it and the storage has lost, and
// reports whether there was anything. Revisions come first, so that a head never points
// at one that is not there. What stands in the storage stays, but for a head of an
// earlier revision and an earlier draft; which study was open last is taken from the copy where the storage
// has lost something.
func Recover(s Storage, copied map[string]string) (found bool, err error) {
	for _, key := range sortedKeys(copied) {
		text, ok, err := s.Get(key)
		if err != nil {
			return found, err
		}
		if ok && !(overtakes(key, copied[key], text) || key == currentKey && found && copied[key] != text) {
			continue
		}
		if err := s.Set(key, copied[key]); err != nil {
			return found, err
		}
		found = true
	}
	return found, nil
}

// sortedKeys returns our keys: revisions, then heads, then the others.
func sortedKeys(copied map[string]string) []string {
	var keys []string
	for key := range copied {
		if strings.HasPrefix(key, prefix) {
			keys = append(keys, key)
		}
	}
	rank := func(key string) int {
		switch {
		case strings.HasPrefix(key, studiesPrefix):
			return 0
		case strings.HasPrefix(key, headPrefix):
			return 1
		}
		return 2
	}
	slices.SortFunc(keys, func(a, b string) int {
		if d := rank(a) - rank(b); d != 0 {
			return d
		}
		return strings.Compare(a, b)
	})
	return keys
}

// overtakes reports whether a text is later than another of its key: a head that points at
// a later revision, or a later draft. One that is damaged, or of a newer program, is not
// overtaken.
func overtakes(key, text, other string) bool {
	switch {
	case strings.HasPrefix(key, headPrefix):
		a, errA := parseHead(text)
		b, errB := parseHead(other)
		return errors.Join(errA, errB) == nil && a.Version.compare(b.Version) > 0
	case strings.HasPrefix(key, draftPrefix):
		a, errA := parseDraft(text)
		b, errB := parseDraft(other)
		return errors.Join(errA, errB) == nil && a.number > b.number
	}
	return false
}
