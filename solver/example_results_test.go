package solver_test

import (
	"fmt"

	"toewright/solver"
)

// The outer wheel that belongs to 20 deg of the inner one by the cot rule, and how
// far a car follows it.
func ExampleTurn_Ackermann() {
	const pivot, wheelbase = 1300, 2540 // mm
	inner := solver.Deg(20)
	fmt.Printf("by the rule %.2f deg\n", solver.CotRule(inner, pivot, wheelbase).Degrees())
	car := solver.Turn{Inner: inner, Outer: solver.Deg(18.6)}
	fmt.Printf("the car: toe-out %.2f deg, Ackermann %.0f %%\n", car.ToeOut().Degrees(), car.Ackermann(pivot, wheelbase))
	// Output:
	// by the rule 17.06 deg
	// the car: toe-out 1.40 deg, Ackermann 48 %
}
