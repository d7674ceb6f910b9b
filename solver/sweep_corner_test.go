package solver_test

import (
	"path/filepath"
	"testing"

	"toewright/solver"
)

// TestToeOnly: the toe and its derivatives are the same whether the rest is asked
// for or not, and the rest is left out.
func TestToeOnly(t *testing.T) {
	for _, file := range []string{"dw01_saloon_rear_steer.json", "ml01_front_virtual_axis.json", "sa01_cross_steer_right_arm.json"} {
		c := loadCase(t, filepath.Join("../testdata/cases", file))
		d := c.Study.design(t)
		x := c.Study.candidate(t, d, "base")
		by, err := x.Tangents([]solver.Change{change(t, d, "toe", 0)})
		if err != nil {
			t.Fatal(err)
		}
		all := solver.SweepInput{Travels: []float64{-40, 0, 40}, By: by, Ground: true, Instant: true, Joints: x.Joints()}
		few := all
		few.ToeOnly = true
		var want, got [2]solver.Curve
		ws := solver.NewWorkspace()
		if err := x.Sweep(ws, &all, &want); err != nil {
			t.Fatal(err)
		}
		if err := x.Sweep(ws, &few, &got); err != nil {
			t.Fatal(err)
		}
		for _, s := range solver.Sides {
			for i, p := range got[s].Positions {
				q := want[s].Positions[i]
				if p != (solver.Position{Travel: q.Travel, Toe: q.Toe}) {
					t.Errorf("%s, %s, %g mm: %+v, want toe %v alone", file, s, q.Travel, p, q.Toe)
				}
				if got[s].ToeRate(i, 0) != want[s].ToeRate(i, 0) {
					t.Errorf("%s, %s, %g mm: derivative %g, want %g", file, s, q.Travel, got[s].ToeRate(i, 0), want[s].ToeRate(i, 0))
				}
			}
		}
	}
}
