package solver_test

import (
	"path/filepath"
	"testing"

	"toewright/solver"
)

// TestFreePartsStand: a car of which only ends of the rods that set toe are moved is
// the one that the equations of the static position give. A ride height of 0 has
// them solved.
func TestFreePartsStand(t *testing.T) {
	const tol = 1e-10 // deg, what a static position is solved to
	for _, tt := range []struct {
		name, file string
		changed    map[string]float64
	}{
		{"wishbone", "dw07_large_caster.json", map[string]float64{"tieRodOuterHeight": 6, "tieRodInnerLateral": -3, "steeringArmLength": 5, "steeringArmOffset": -4, "upperBallJoint.y": 2}},
		{"strut", "st03_high_tie_rod_on_strut.json", map[string]float64{"tieRodInnerHeight": 8, "steeringArmLength": -6, "strutTop.x": 3}},
		{"multi-link", "ml01_front_virtual_axis.json", map[string]float64{"tieRodOuterHeight": -6, "steeringArmLength": 4}},
		{"solid axle", "sa01_cross_steer_right_arm.json", map[string]float64{"tieRodOuterHeight": 5, "dragLinkOuterHeight": -8, "dragLinkInnerHeight": 4}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c := loadCase(t, filepath.Join("../testdata/cases", tt.file))
			d := c.Study.design(t)
			in := solver.SweepInput{Travels: []float64{-40, 0, 35}}
			base, got := swept(t, assembled(t, d, nil), in), swept(t, assembled(t, d, tt.changed), in)
			tt.changed["rideHeight"] = 0
			want := swept(t, assembled(t, d, tt.changed), in)
			for _, s := range solver.Sides {
				for i := range in.Travels {
					near(t, "toe", got[s].Positions[i].Toe.Degrees(), want[s].Positions[i].Toe.Degrees(), tol)
					near(t, "caster", got[s].Positions[i].Caster.Degrees(), want[s].Positions[i].Caster.Degrees(), tol)
				}
				if base[s].Positions[0].Toe == got[s].Positions[0].Toe {
					t.Errorf("%s side: the changes move no toe", s)
				}
			}
		})
	}
}

// TestTangentsAlone: the derivative by a parameter is the same, to the last bit,
// whether it is asked for alone or with all others.
func TestTangentsAlone(t *testing.T) {
	c := loadCase(t, "../testdata/cases/dw05_antidive_skewed_axes.json")
	d := c.Study.design(t)
	x := assembled(t, d, map[string]float64{"tieRodOuterHeight": 4})
	rates := func(by []solver.Change) [2]solver.Curve {
		tangents, err := x.Tangents(by)
		if err != nil {
			t.Fatal(err)
		}
		return swept(t, x, solver.SweepInput{Travels: []float64{-40, 0, 35}, By: tangents})
	}
	var all []solver.Change
	for _, p := range solver.Parameters(d) {
		all = append(all, solver.Change{Parameter: p})
	}
	whole := rates(all)
	for k := range all {
		alone := rates(all[k : k+1])
		for _, s := range solver.Sides {
			for i := range alone[s].Positions {
				if got, want := alone[s].ToeRate(i, 0), whole[s].ToeRate(i, k); got != want {
					t.Errorf("%s, %s side, position %d: %g alone, %g among all", all[k].Key(), s, i, got, want)
				}
			}
		}
	}
}
