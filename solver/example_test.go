package solver_test

import (
	"fmt"

	"toewright/solver"
)

// saloon is an invented car with double wishbones and a rack behind the axle. Its
// tie rod's outer ball stands too high: the wheel toes out as it rises.
func saloon() *solver.Design {
	kind, err := solver.KindByName("double-wishbone")
	if err != nil {
		panic(err)
	}
	d := &solver.Design{Kind: kind, Gear: solver.Gear{Kind: solver.Rack, Axis: solver.Vec{Y: 1}}}
	if err := d.SetPoints(map[string]solver.Vec{ // mm
		"lowerFrontPivot": {X: 155, Y: 345, Z: 204}, "lowerRearPivot": {X: -165, Y: 350, Z: 194}, "lowerBallJoint": {X: 6, Y: 695, Z: 190},
		"upperFrontPivot": {X: 105, Y: 428, Z: 478}, "upperRearPivot": {X: -125, Y: 434, Z: 460}, "upperBallJoint": {X: -16, Y: 652, Z: 464},
		"tieRodOuter": {X: -132, Y: 686, Z: 240}, "tieRodInner": {X: -146, Y: 374, Z: 236},
		"wheelCentre": {X: 0, Y: 752, Z: 308},
	}); err != nil {
		panic(err)
	}
	for _, s := range solver.Sides {
		d.Toe[s], d.Camber[s] = solver.Deg(0.1), solver.Deg(-0.75)
	}
	return d
}

// The toe of a car as it stands and with its outer tie-rod ball 12 mm lower. Each
// car is assembled with its static toe set again, then moved.
func ExampleAxle_Sweep() {
	car, err := solver.NewAssembler(saloon())
	if err != nil {
		fmt.Println(err)
		return
	}
	lower, err := solver.NewChange(saloon(), "tieRodOuterHeight", -12)
	if err != nil {
		fmt.Println(err)
		return
	}
	ws := solver.NewWorkspace()
	in := solver.SweepInput{Travels: []float64{-50, -25, 0, 25, 50}}
	for _, changes := range [][]solver.Change{nil, {lower}} {
		axle, err := car.Assemble(changes, solver.HoldAll)
		if err != nil {
			fmt.Println(err)
			return
		}
		var curves [2]solver.Curve
		if err := axle.Sweep(ws, &in, &curves); err != nil {
			fmt.Println(err)
			return
		}
		for _, p := range curves[solver.Left].Positions {
			fmt.Printf("at %+.0f mm %+.3f deg\n", p.Travel, p.Toe.Degrees())
		}
	}
	// Output:
	// at -50 mm +1.001 deg
	// at -25 mm +0.519 deg
	// at +0 mm +0.100 deg
	// at +25 mm -0.273 deg
	// at +50 mm -0.609 deg
	// at -50 mm +0.118 deg
	// at -25 mm +0.102 deg
	// at +0 mm +0.100 deg
	// at +25 mm +0.110 deg
	// at +50 mm +0.132 deg
}
