package store

import "strings"

// What begins the labels of revisions that are as an earlier one was.
const (
	undone = "undo "
	redone = "redo "
)

// Undone returns the label of a revision that an edit is taken back in.
func Undone(label string) string { return undone + label }

// Redone returns the label of a revision that an edit is done again in.
func Redone(label string) string { return redone + label }

// Step is an edit of a study that was kept, and so can still be taken back.
type Step struct {
	Label  string
	Before Version // Before is the version that it was made to.
}

// Steps returns the edits that led to a version, the earliest first, as far as the
// versions before them can be opened. What was undone is none of them.
func (s *Store) Steps(id ID, v Version) ([]Step, error) {
	list, err := s.revisions(id)
	if err != nil {
		return nil, err
	}
	at := map[Version]*Revision{}
	for _, r := range list {
		if r.Problem == nil && r.Parent.Number < r.Version.Number {
			at[r.Version] = r
		}
	}
	var steps []Step
	for r := settled(at, at[v]); r != nil; {
		before := at[r.Parent]
		if before == nil {
			break
		}
		steps = append([]Step{{r.Label, before.Version}}, steps...)
		r = settled(at, before)
	}
	return steps, nil
}

// settled returns the revision that another stands for: the one that was undone or redone
// to, or else the revision itself. Undo goes back among what could be undone then, redo to
// what was there last.
func settled(at map[Version]*Revision, r *Revision) *Revision {
	if r == nil {
		return nil
	}
	back := strings.HasPrefix(r.Label, undone)
	if !back && !strings.HasPrefix(r.Label, redone) {
		return r
	}
	for same := at[r.Parent]; same != nil; same = at[same.Parent] {
		if back {
			same = settled(at, same)
		}
		if same.packed == r.packed {
			return settled(at, same)
		}
	}
	return r
}
