package model

import (
	"slices"

	"toewright/internal/study"
	"toewright/solver"
)

// SetYardstick makes a car the one that differences are taken from; the study keeps
// its name.
func (d *Desk) SetYardstick(car int) error {
	name := ""
	if k := d.Session.Cars().At(car); k != nil && car > 0 {
		name = k.Name
	}
	d.View.Yardstick = car
	return d.Session.SetDisplay("compare with another car", func(v *study.Display) { v.Yardstick = name })
}

// Duplicate adds a copy of a car, the base car included, and selects it.
func (d *Desk) Duplicate(car int) error {
	i, err := d.Session.Duplicate(car)
	if err == nil {
		d.Select(i)
	}
	return err
}

// Delete removes a candidate. What was selected, or was the yardstick, stays so; where
// it was the one removed, the base car takes its place.
func (d *Desk) Delete(car int) error {
	if err := d.Session.Delete(car); err != nil {
		return err
	}
	d.View.Car = afterDelete(d.View.Car, car)
	d.View.Yardstick = afterDelete(d.View.Yardstick, car)
	return nil
}

func afterDelete(index, gone int) int {
	switch {
	case index == gone:
		return 0
	case index > gone:
		return index - 1
	}
	return index
}

// Arrange puts the candidates into the order of a list of cars; those that are not in it
// keep their places. What was selected, or was the yardstick, stays so.
func (d *Desk) Arrange(list []*Car) error {
	order, err := d.Session.Arrange(list)
	if err != nil {
		return err
	}
	d.View.Car, d.View.Yardstick = 1+slices.Index(order, d.View.Car), 1+slices.Index(order, d.View.Yardstick)
	return nil
}

// ValueOf returns a car's value of a parameter, in file units or degrees: of one that
// it does not change 0, or the base car's setting.
func (d *Desk) ValueOf(car int, key string) float64 {
	if c := d.Session.Cars().At(car); c != nil {
		if v, ok := c.Changes[key]; ok {
			return v
		}
	}
	return d.Usual(key)
}

// Usual returns the value of a parameter that changes nothing: 0, or the base car's
// setting.
func (d *Desk) Usual(key string) float64 {
	cars := d.Session.Cars()
	base := cars.Base()
	if base == nil || base.Err != nil {
		return 0
	}
	p, sides, err := solver.FindParameter(cars.Design, key)
	if err != nil || !p.Absolute {
		return 0
	}
	side := solver.Left
	if sides == solver.RightOnly {
		side = solver.Right
	}
	rest := base.Rest(side)
	if rest == nil {
		return 0
	}
	setting := map[string]solver.Angle{"toe": rest.Toe, "camber": rest.Camber, "caster": rest.Caster}[p.Key]
	return round(setting.Degrees())
}

// Setpoints are what a candidate may hold.
var Setpoints = []string{"toe", "camber", "caster"}

// SetHeld says whether a candidate holds a setpoint.
func (s *Session) SetHeld(car int, setpoint string, held bool) error {
	if err := s.checkCandidate(car); err != nil {
		return err
	}
	list := slices.Clone(s.doc.Candidates)
	k := &list[car-1]
	names := k.Hold
	if names == nil {
		names = Setpoints
	}
	k.Hold = []string{}
	for _, name := range Setpoints {
		if name == setpoint && held || name != setpoint && slices.Contains(names, name) {
			k.Hold = append(k.Hold, name)
		}
	}
	if len(k.Hold) == len(Setpoints) {
		k.Hold = nil
	}
	s.withCandidates("hold of "+k.Name, "", list)
	return nil
}

// SetDisplay changes how numbers are shown. The cars stay as they are solved.
func (s *Session) SetDisplay(label string, change func(*study.Display)) error {
	next, display := *s.doc, study.Display{}
	if next.Display != nil {
		display = *next.Display
	}
	change(&display)
	next.Display = &display
	if err := opensAgain(&next); err != nil {
		return err
	}
	s.remember(label, "")
	s.doc, s.made, s.run = &next, Step{Label: label}, ""
	s.cars = s.cars.again(&next)
	return nil
}
