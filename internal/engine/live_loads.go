package engine

import "toewright/solver"

// Forces sets out to the forces of the study's load case i on a car where it is held in an
// attitude, whatever that of the case, and returns what then acts on the wheels.
func (l *Live) Forces(car *LiveCar, i int, at solver.Attitude, ws *solver.Workspace, out *[2]solver.Forces) (solver.LoadCase, error) {
	in := l.window.loadCase(&l.window.doc.Loads[i])
	in.Attitude = at
	k, err := car.Axle.Statics(l.window.loadParts())
	if err == nil {
		err = k.Forces(ws, &in, out)
	}
	if err != nil {
		lo := loader{cars: l.window.cars}
		err = lo.explain(err, "")
	}
	return in, err
}

// SteerOf returns a steering input of the study in mm or radians.
func (l *Live) SteerOf(x float64) float64 {
	if l.window == nil {
		return 0
	}
	return l.window.steer(x)
}
