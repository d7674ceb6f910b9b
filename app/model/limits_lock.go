package model

import (
	"errors"
	"strconv"
	"strings"

	"toewright/internal/study"
	"toewright/solver"
)

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

// LockField returns the most steering input to either side as the study states it, with
// its unit: "" where it states none.
func (n Numbers) LockField(d *study.Document, g *solver.Gear) (value, unit string) {
	lock := 0.0
	if d.Steering != nil {
		lock = d.Steering.Lock
	}
	unit = n.quantityUnit(g.Quantity())
	switch {
	case lock == 0:
		return "", unit
	case g.Quantity() == solver.AngleQuantity:
		return strconv.FormatFloat(lock, 'g', -1, 64), unit
	}
	return n.LengthNumber(d.Units.Millimetres(lock)), unit
}

// errLock is what a lock that is none is refused with.
var errLock = errors.New("full lock is more than 0, or empty where it is not known")

// SetLock states the most steering input to either side as [Numbers.LockField] writes it,
// or with an empty text that it is not known.
func (s *Session) SetLock(text string) error {
	lock := 0.0
	if text = strings.TrimSpace(text); text != "" {
		x, err := NumbersOf(s.doc).parseQuantity(s.doc, s.cars.Design.Gear.Quantity(), text)
		if err != nil {
			return err
		}
		if !(x > 0) {
			return errLock
		}
		lock = x
	}
	return s.Edit("full lock", "", func(d *study.Document) { d.Steering.Lock = lock })
}
