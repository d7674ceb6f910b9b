package model

import (
	"fmt"
	"math"

	"toewright/solver"
)

// steerLength and steerAngle are the steering input, of a rack in mm and of a pitman arm in radians, by
// which the quickness of the steering is taken about straight ahead.
const (
	steerLength = 1.0
	steerAngle  = 0.01
)

// quickness returns how far the left wheel turns, in radians per mm or per radian of
// steering input, about straight ahead; ok is false where it cannot be had.
func quickness(x *solver.Axle) (rate float64, ok bool) {
	by := steerLength
	if x.Gear().Quantity() == solver.AngleQuantity {
		by = steerAngle
	}
	var toe [2]solver.Angle
	ws := solver.NewWorkspace()
	for i, sign := range []float64{-1, 1} {
		var curves [2]solver.Curve
		in := solver.SweepInput{Travels: []float64{0}, From: solver.Attitude{Steer: sign * by}}
		if x.Sweep(ws, &in, &curves) != nil || len(curves[0].Positions) == 0 {
			return 0, false
		}
		toe[i] = curves[0].Positions[0].Toe
	}
	return math.Abs(float64(toe[1]-toe[0])) / (2 * by), true
}

// least part of the steering's quickness, and least change of a length in mm, that is
// worth a word.
const (
	leastQuickness = 0.005
	leastShift     = 0.1
)

// elsewhere says what the answer costs beside the toe curve.
func (j judge) elsewhere(car *Car) []Remark {
	base := j.cars.Base()
	if base == nil || base.Err != nil || car.Err != nil {
		return nil
	}
	var list []Remark
	before, ok1 := quickness(base.Axle)
	after, ok2 := quickness(car.Axle)
	if part := after/before - 1; ok1 && ok2 && before > 0 && math.Abs(part) >= leastQuickness {
		word := "quicker"
		if part < 0 {
			word = "slower"
		}
		list = append(list, Remark{Text: fmt.Sprintf("The steering becomes %.1f %% %s about straight ahead.", 100*math.Abs(part), word)})
	}
	return append(list, j.shifts(base, car)...)
}

// shifts says how contact point and steering axis move.
func (j judge) shifts(base, car *Car) []Remark {
	p, q := base.Rest(solver.Left), car.Rest(solver.Left)
	if p == nil || q == nil {
		return nil
	}
	var list []Remark
	for _, f := range []struct {
		name string
		by   float64
	}{
		{"scrub radius", q.ScrubRadius - p.ScrubRadius},
		{"caster trail", q.Trail - p.Trail},
	} {
		if math.Abs(f.by) >= leastShift {
			list = append(list, Remark{Text: fmt.Sprintf("The %s changes by %s.", f.name, j.n.Length(f.by))})
		}
	}
	return list
}
