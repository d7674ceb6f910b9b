package model

import "toewright/internal/study"

// TargetCar returns the index of the car whose curve is wanted, -1 where none is, or one
// that is gone.
func (s *Session) TargetCar() int {
	f := s.doc.Search
	switch {
	case f == nil || f.TargetOf == "":
		return -1
	case f.TargetOf == study.BaseName:
		return 0
	}
	for i := range s.doc.Candidates {
		if s.doc.Candidates[i].Name == f.TargetOf {
			return i + 1
		}
	}
	return -1
}

// SetTargetCar wants the curve of a car, 0 for the base car.
func (s *Session) SetTargetCar(car int) error {
	name := study.BaseName
	if car > 0 {
		if err := s.checkCandidate(car); err != nil {
			return err
		}
		name = s.doc.Candidates[car-1].Name
	}
	return s.EditSearch("want the curve of "+name, "", func(f *study.Search) {
		setTarget(f, nil)
		f.TargetRight, f.TargetOf = nil, name
	})
}

// setTarget states the target by points, none for a flat one, in place of any other
// way.
func setTarget(f *study.Search, points [][2]float64) {
	f.Target, f.TargetOf, f.TargetSlope = points, "", 0
}
