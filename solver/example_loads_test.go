package solver_test

import (
	"fmt"

	"toewright/solver"
)

// What the tie rod and the stud of the outer ball bear when the wheel strikes a kerb,
// with the ball where it is and on a stack that lowers it by 12 mm.
func ExampleStatics_Forces() {
	d := saloon()
	d.TyreRadius = 308
	parts := solver.LoadParts{Stud: &solver.Stud{Diameter: 14, Height: 22}}
	parts.Springs[solver.Left] = &solver.Spring{
		Body: solver.Vec{X: 0, Y: 480, Z: 620}, Wheel: solver.Vec{X: 0, Y: 600, Z: 200}, On: solver.OnLowerArm,
	}
	kerb := solver.LoadCase{Wheels: [2]solver.WheelLoad{
		solver.Left: {Force: solver.Vec{X: -7500, Z: 6000}, AtCentre: true}, // N
	}}
	cars, err := solver.NewAssembler(d)
	if err != nil {
		fmt.Println(err)
		return
	}
	ws := solver.NewWorkspace()
	for _, stack := range []float64{0, 12} { // mm, under the arm
		lower, err := solver.NewChange(d, "tieRodOuterHeight", -stack)
		if err != nil {
			fmt.Println(err)
			return
		}
		axle, err := cars.Assemble([]solver.Change{lower}, solver.HoldAll)
		if err != nil {
			fmt.Println(err)
			return
		}
		statics, err := axle.Statics(&parts)
		if err != nil {
			fmt.Println(err)
			return
		}
		var forces [2]solver.Forces
		if err := statics.Forces(ws, &kerb, &forces); err != nil {
			fmt.Println(err)
			return
		}
		f := &forces[solver.Left]
		fmt.Printf("stack of %.0f mm: rod %.0f N, spring %.0f N, stud %.0f MPa\n", stack, f.TieRod, f.Spring, f.StudBending)
	}
	// Output:
	// stack of 0 mm: rod -3978 N, spring 9337 N, stud 325 MPa
	// stack of 12 mm: rod -3977 N, spring 9126 N, stud 502 MPa
}
