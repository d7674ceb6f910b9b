package model

import "toewright/internal/study"

// LimitPlaces are where along the travel a limit can be looked at, straight ahead first.
var LimitPlaces = []struct{ Key, Label string }{
	{study.AtStraight, "straight ahead"}, {study.AtLock, "straight ahead and at both locks"},
}

// SetLimitAt changes where a limit of the study's search is looked at. It is an error to
// ask for full lock of a study that states none.
func (s *Session) SetLimitAt(i int, at string) error {
	if at == study.AtStraight {
		at = ""
	}
	d := s.doc.Clone()
	d.Search.Limits[i].At = at
	if err := d.LimitAtLock(i); err != nil {
		return err
	}
	return s.SetLimit("where a limit is looked at", i, func(l *study.Limit) { l.At = at })
}

// LockOf returns the most steering input to either side as the study's field of it; nil
// where the car does not steer.
func LockOf(d *study.Document) *CarValue {
	for _, v := range CarValues(d) {
		if v.Path == "steering.lock" {
			return &v
		}
	}
	return nil
}

// SetLock states the most steering input to either side, or with an empty text that it is
// not known.
func (s *Session) SetLock(text string) error { return s.SetCarValue(LockOf(s.doc), text) }
