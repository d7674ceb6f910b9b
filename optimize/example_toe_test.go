package optimize_test

import (
	"context"
	"fmt"

	"toewright/optimize"
	"toewright/solver"
)

// coupe is an invented car with double wishbones and a rack behind the axle.
func coupe() (*solver.Design, error) {
	kind, err := solver.KindByName("double-wishbone")
	if err != nil {
		return nil, err
	}
	d := &solver.Design{Kind: kind, Gear: solver.Gear{Kind: solver.Rack, Axis: solver.Vec{Y: 1}}}
	return d, d.SetPoints(map[string]solver.Vec{ // mm
		"lowerFrontPivot": {X: 155, Y: 345, Z: 204}, "lowerRearPivot": {X: -165, Y: 350, Z: 194}, "lowerBallJoint": {X: 6, Y: 695, Z: 190},
		"upperFrontPivot": {X: 105, Y: 428, Z: 478}, "upperRearPivot": {X: -125, Y: 434, Z: 460}, "upperBallJoint": {X: -16, Y: 652, Z: 464},
		"tieRodOuter": {X: -132, Y: 686, Z: 240}, "tieRodInner": {X: -146, Y: 374, Z: 236},
		"wheelCentre": {X: 0, Y: 752, Z: 308},
	})
}

// How high must the tie rod's outer ball stand, and how far out the inner one, for
// a wheel that does not steer over 50 mm of bump and droop?
func ExampleSearchToe() {
	d, err := coupe()
	if err != nil {
		fmt.Println(err)
		return
	}
	base, err := solver.NewAssembler(d)
	if err != nil {
		fmt.Println(err)
		return
	}
	search := &optimize.ToeSearch{Base: base, Measure: optimize.RMS, Judge: solver.LeftOnly}
	for _, key := range []string{"tieRodOuterHeight", "tieRodInnerLateral"} {
		p, sides, err := solver.FindParameter(d, key)
		if err != nil {
			fmt.Println(err)
			return
		}
		search.Free = append(search.Free, optimize.Free{Parameter: p, Sides: sides, Min: -25, Max: 25})
	}
	search.Travels, err = solver.Grid(50, 50, 5)
	if err != nil {
		fmt.Println(err)
		return
	}
	answer, err := optimize.SearchToe(context.Background(), search, &optimize.Settings{Seed: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("rms %.3f deg as it stands, %.4f deg at best\n", answer.Start.RMS.Degrees(), answer.Best.RMS.Degrees())
	fmt.Printf("outer ball %+.1f mm in height, inner ball %+.1f mm outboard\n", answer.Values[0], answer.Values[1])
	// Output:
	// rms 0.481 deg as it stands, 0.0002 deg at best
	// outer ball -11.6 mm in height, inner ball +4.9 mm outboard
}
