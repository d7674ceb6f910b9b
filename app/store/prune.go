package store

import "errors"

// prune removes the oldest revisions that v descends from, so that keep of them stay,
// v included. Those that cannot be opened, and those of another line, stay too.
func (s *Store) prune(id ID, list []*Revision, v Version, keep int) error {
	line, kept := ancestry(list, v), 0
	for _, r := range list {
		if !line[r.Version] || r.Problem != nil {
			continue
		}
		if kept++; kept <= keep {
			continue
		}
		if err := s.storage.Remove(revisionKey(id, r.Version)); err != nil {
			return err
		}
	}
	return nil
}

// withRoom does something that needs room, giving up old revisions that v descends
// from as long as the storage is full. V itself and what it was made from stay.
func (s *Store) withRoom(id ID, list []*Revision, v Version, do func() error) error {
	err := do()
	for _, keep := range []int{History / 2, History / 4, 2} {
		if !errors.Is(err, ErrFull) {
			return err
		}
		if err := s.prune(id, list, v, keep); err != nil {
			return err
		}
		err = do()
	}
	return err
}
