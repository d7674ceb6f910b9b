package model

import "toewright/internal/study"

// readTravels are the wheel travels of the readings, for the document's readings as
// they stand.
type readTravels struct {
	of    []study.Reading
	known map[int][]float64 // by the place of the set, mm; nil where there are none
}

// ReadTravels returns the wheel travels in mm at which set i of the study's readings was
// read: block heights, ball heights and damper lengths are turned into those of the wheel
// of a car with the parts of the set. It returns nil for a set whose travels the car does
// not reach, or for one read at a damper that the study does not have. What is returned
// must not be changed.
func (s *Session) ReadTravels(i int) []float64 {
	c := s.cars
	if c.read == nil || !sameReadings(c.read.of, s.doc.Readings) {
		c.read = &readTravels{of: s.doc.Readings, known: map[int][]float64{}}
	}
	travels, ok := c.read.known[i]
	if !ok {
		travels, _ = c.ReadTravels(s.doc, &s.doc.Readings[i])
		c.read.known[i] = travels
	}
	return travels
}

// sameReadings reports whether two lists are one: an edit that does not touch them
// leaves them where they are.
func sameReadings(a, b []study.Reading) bool {
	return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0])
}
