package store

// Delete puts a study in the bin, from which [Store.Restore] takes it back.
func (s *Store) Delete(id ID) error { return s.setDeleted(id, true) }

// Restore takes a study out of the bin.
func (s *Store) Restore(id ID) error { return s.setDeleted(id, false) }

func (s *Store) setDeleted(id ID, deleted bool) error {
	h, ok, err := s.head(id)
	if err != nil {
		return err
	}
	if !ok {
		return ErrNone
	}
	h.Deleted = deleted
	return s.setHead(id, h)
}

// EmptyBin removes the studies in the bin for good, and with them their history. Those
// that a newer version has written, or that are damaged, stay.
func (s *Store) EmptyBin() error {
	entries, err := s.List()
	if err != nil {
		return err
	}
	for _, e := range entries {
		if !e.Deleted || e.Problem != nil {
			continue
		}
		if err := s.erase(e.ID); err != nil {
			return err
		}
	}
	return nil
}

// erase removes a study: the head last, so that a crash half way leaves it in the
// bin.
func (s *Store) erase(id ID) error {
	list, err := s.revisions(id)
	if err != nil {
		return err
	}
	for _, r := range list {
		if r.Problem != nil {
			continue
		}
		if err := s.storage.Remove(revisionKey(id, r.Version)); err != nil {
			return err
		}
	}
	if err := s.storage.Remove(draftKey(id)); err != nil {
		return err
	}
	return s.storage.Remove(headKey(id))
}

// Discard removes a revision that two tabs saved at once and that nobody needs.
func (s *Store) Discard(id ID, v Version) error { return s.storage.Remove(revisionKey(id, v)) }
