package solver_test

import (
	"path/filepath"
	"testing"

	"toewright/solver"
)

// TestSteeringArmFollowsItsParameter: steeringArmLength lengthens the arm by just
// that, whatever else is held, as long as the ball keeps its height in the knuckle.
func TestSteeringArmFollowsItsParameter(t *testing.T) {
	for _, file := range []string{"dw01_saloon_rear_steer.json", "st01_hatch_rear_steer.json", "ml01_front_virtual_axis.json", "sa01_cross_steer_right_arm.json"} {
		t.Run(file, func(t *testing.T) {
			c := loadCase(t, filepath.Join("../testdata/cases", file))
			d := c.Study.design(t)
			a, err := solver.NewAssembler(d)
			if err != nil {
				t.Fatal(err)
			}
			before, err := a.Assemble(nil, solver.HoldAll)
			if err != nil {
				t.Fatal(err)
			}
			after, err := a.Assemble([]solver.Change{change(t, d, "steeringArmLength", 7)}, solver.HoldAll)
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range solver.Sides {
				near(t, s.String()+" arm", after.SteeringArm(s)-before.SteeringArm(s), 7, 1e-9)
			}
		})
	}
}
