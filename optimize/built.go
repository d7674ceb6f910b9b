package optimize

import "toewright/solver"

// Built says how cars leave the line where static toe is not set again: with the
// rods of the car as drawn, and toe that is what comes of them.
type Built struct {
	Rods solver.Rods
	// Toe of each side of the car as drawn at travel 0, from which that of the
	// cars made is counted.
	Toe [2]solver.Angle
}

// LeaveToe makes all cars of the judge leave the line as built, drawn being the car
// that they are meant to be: toe change then counts from drawn's own toe at travel
// 0, so that what a car's static toe is off by is part of it. It returns an error
// where drawn does not reach travel 0 in the judge's attitude.
func (j *Judge) LeaveToe(drawn *solver.Axle) error {
	var curves [2]solver.Curve
	in := solver.SweepInput{ToeOnly: true, Travels: []float64{0}, From: j.From}
	if err := drawn.Sweep(solver.NewWorkspace(), &in, &curves); err != nil {
		return err
	}
	b := &Built{Rods: drawn.Rods()}
	for _, s := range solver.Sides {
		if !curves[s].Reach.Whole() {
			return reachProblem(s, &curves[s].Reach)
		}
		b.Toe[s] = curves[s].Positions[0].Toe
	}
	j.Built = b
	return nil
}

// assemble makes car the one with changes as it leaves the line.
func (j *Judge) assemble(car *solver.Axle, sides solver.Selection, changes []solver.Change) error {
	var rods *solver.Rods
	if j.Built != nil {
		rods = &j.Built.Rods
	}
	return j.Base.Reassemble(car, sides, changes, j.Hold, rods)
}

// home returns the toe from which that of a side's curve counts; zero is where the
// curve has travel 0.
func (j *Judge) home(c *solver.Curve, zero int, side solver.Side) solver.Angle {
	if j.Built != nil {
		return j.Built.Toe[side]
	}
	return c.Positions[zero].Toe
}

// held returns the setpoints that are re-solved on each car.
func (j *Judge) held() solver.Hold {
	if j.Built != nil {
		return j.Hold &^ solver.HoldToe
	}
	return j.Hold
}
