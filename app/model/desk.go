package model

import (
	"maps"

	"toewright/internal/study"
)

// Desk is what lies before the reader: one study and the view of it. It belongs to
// one goroutine.
type Desk struct {
	Session *Session
	View    View
	// Said is the last announcement, for the line that is read aloud.
	Said string
	// Moving is true while a hand moves a part without a rest: the sheet follows in every
	// frame, and whatever takes longer than a frame waits.
	Moving bool

	standings standings
	setUps    setUps
}

// NewDesk returns a desk with a study on it.
func NewDesk(doc *study.Document) *Desk {
	d := &Desk{}
	d.Open(doc)
	return d
}

// Open puts another study on the desk, which must not be changed afterwards. Its
// best candidate is selected.
func (d *Desk) Open(doc *study.Document) {
	doc = doc.Recognised()
	d.Session, d.View = Open(doc), NewView()
	d.View.Yardstick = indexOf(doc, yardstickOf(doc))
	d.View.Car = d.best()
}

// yardstickOf returns the name of the car that differences are taken from.
func yardstickOf(doc *study.Document) string {
	if doc.Display == nil {
		return ""
	}
	return doc.Display.Yardstick
}

// indexOf returns the index of the car of a name, 0 where there is none.
func indexOf(doc *study.Document, name string) int {
	for i, k := range doc.Candidates {
		if k.Name == name {
			return i + 1
		}
	}
	return 0
}

// best returns the index of the car whose curve comes nearest to the target, by the
// worse of its sides.
func (d *Desk) best() int {
	best := 0
	rows := Table(d.Session.Cars(), Order{ByFigure: true, Figure: RMSFigure})
	if len(rows) > 0 {
		best = rows[0].Index
	}
	return best
}

// Selected returns the selected car, the base car where the selection is gone, nil
// where nothing can be solved.
func (d *Desk) Selected() *Car {
	cars := d.Session.Cars()
	if c := cars.At(d.View.Car); c != nil {
		return c
	}
	return cars.Base()
}

// Select selects a car.
func (d *Desk) Select(car int) { d.View.Car = car }

// ShowBest shows the curve of the best car so far of a search, by the changes that it makes, or
// none of nil. It reports whether another was shown before.
func (d *Desk) ShowBest(changes study.Changes) bool {
	old := d.View.Best
	switch {
	case changes == nil || d.Session.Cars().Err != nil:
		d.View.Best = nil
		return old != nil
	case old != nil && maps.Equal(old.Changes, changes):
		return false
	}
	d.View.Best = d.Session.Cars().Try(changes)
	return true
}

// Value returns the selected car's value of a parameter, in file units or degrees:
// 0 for a change that it does not make.
func (d *Desk) Value(key string) float64 {
	if c := d.Selected(); c != nil {
		return c.Changes[key]
	}
	return 0
}

// Set sets a parameter of the selected car, in file units or degrees. The base car
// does not change: where it is selected, a candidate is added first and selected.
// Edits of one run are undone together, as of [Session.Edit].
func (d *Desk) Set(key string, value float64, run string) error {
	if d.View.Car == 0 {
		k := study.Candidate{Name: "candidate", Changes: study.Changes{key: value}}
		i, err := d.Session.AddCandidate(k)
		if err != nil {
			return err
		}
		d.Select(i)
	}
	return d.Session.SetChange(d.View.Car, key, value, run)
}
