package solver_test

import (
	"errors"
	"fmt"

	"toewright/solver"
)

// Why does the saloon's wheel toe out as it rises, and how far must which ball move for
// it not to?
func ExampleAxle_Diagnose() {
	cars, err := solver.NewAssembler(saloon())
	if err != nil {
		fmt.Println(err)
		return
	}
	axle, err := cars.Assemble(nil, solver.HoldAll)
	if err != nil {
		fmt.Println(err)
		return
	}
	travels, err := solver.Grid(50, 50, 5)
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err := axle.Diagnose(solver.NewWorkspace(), solver.Left, travels, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("rms %.3f deg\n", d.Shape.RMS.Degrees())
	for i := range d.Remedies {
		r := &d.Remedies[i]
		for _, m := range r.Changes {
			fmt.Printf("%s %+.1f mm ", m.Parameter.Key, m.Value)
		}
		fmt.Printf("leaves %.4f deg\n", r.RMS.Degrees())
	}
	// Output:
	// rms 0.486 deg
	// tieRodOuterHeight -11.9 mm leaves 0.0124 deg
	// tieRodInnerHeight +11.8 mm leaves 0.0316 deg
	// tieRodInnerLateral -8.2 mm leaves 0.4855 deg
	// tieRodOuterHeight -11.7 mm tieRodInnerLateral +4.7 mm leaves 0.0002 deg
	// tieRodInnerHeight +11.5 mm tieRodInnerLateral +11.6 mm leaves 0.0004 deg
}

// Errors are typed: of a travel that the linkage does not reach it is known where the
// motion ends and which link ends it; of a point that is missing, its name.
func ExampleReachError() {
	d := saloon()
	cars, err := solver.NewAssembler(d)
	if err != nil {
		fmt.Println(err)
		return
	}
	axle, err := cars.Assemble(nil, solver.HoldAll)
	if err != nil {
		fmt.Println(err)
		return
	}
	var at solver.Placed
	var reach *solver.ReachError
	if err := axle.Place(solver.NewWorkspace(), [2]float64{400, 400}, 0, &at); errors.As(err, &reach) {
		fmt.Println(reach)
	}
	var input *solver.InputError
	if err := d.SetPoints(map[string]solver.Vec{"tieRodOuter": {X: -132, Y: 686, Z: 240}}); errors.As(err, &input) {
		fmt.Println(input.Key, input.Problem)
	}
	// Output:
	// solver: left side: travel 400 mm cannot be reached: lower arm, rear leg stands in the way after 77 % of it; ask for less travel
	// suspension.left.lowerFrontPivot is missing
}
