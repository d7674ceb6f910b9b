package scene

import (
	"math"

	"toewright/app/model"
	"toewright/solver"
)

// formOf returns how the sheet shows the sides: half of the car where both do the same.
func (s *Stage) formOf() form {
	v := &s.desk.View
	if v.Steer == 0 && v.Motion == solver.BothWheels && s.symmetric() {
		return form{half: true}
	}
	if v.Motion == solver.RightWheel {
		return form{side: solver.Right}
	}
	return form{side: v.Side}
}

// OneWheel reports whether the sheet has a chart of one wheel that does not stand for the
// other.
func (s *Stage) OneWheel() bool {
	return s.car != nil && !s.form.half && s.lone()
}

// symmetric reports whether the curves of all cars shown, and what is wanted of them, are
// alike at both sides.
func (s *Stage) symmetric() bool {
	for _, car := range s.cars.List {
		if car.Err == nil && s.visible(car) && !model.Symmetric(car) {
			return false
		}
	}
	l, r := s.cars.Target(solver.Left), s.cars.Target(solver.Right)
	for _, t := range s.cars.Travels {
		if math.Abs(float64(l.At(t)-r.At(t))) > model.AlikeToe {
			return false
		}
	}
	return true
}
