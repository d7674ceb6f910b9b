package solver_test

import (
	"math"
	"path/filepath"
	"slices"
	"testing"

	"toewright/solver"
)

// TestLinkError finds every link at its length where an axle was placed, and the
// link to a point that is moved by hand.
func TestLinkError(t *testing.T) {
	for _, tt := range []struct {
		file  string
		steer float64
		point int // of the side, moved up by 1 mm
		links []string
	}{
		{"dw05_antidive_skewed_axes.json", 12, 2, []string{"lower arm, front leg", "lower arm, rear leg"}},
		{"st01_hatch_rear_steer.json", -9, 5, []string{"tie rod"}},
		{"ml01_front_virtual_axis.json", 5, 3, []string{"rods.1"}},
		{"sa01_cross_steer_right_arm.json", 10, 2, []string{"tie rod"}},
	} {
		t.Run(tt.file, func(t *testing.T) {
			c := loadCase(t, filepath.Join("../testdata/cases", tt.file))
			x := c.Study.candidate(t, c.Study.design(t), "base")
			var p solver.Placed
			if err := x.Place(solver.NewWorkspace(), [2]float64{30, -20}, tt.steer, &p); err != nil {
				t.Fatal(err)
			}
			if e := x.LinkError(&p); !(math.Abs(e.By) <= 1e-9) {
				t.Errorf("%s misses its length by %g mm", e.Link, e.By)
			}
			p.Side[solver.Right][tt.point].Z++
			e := x.LinkError(&p)
			if !(math.Abs(e.By) > 1e-3) || !slices.Contains(tt.links, e.Link) {
				t.Errorf("LinkError = %+v, want one of %v", e, tt.links)
			}
		})
	}
}
