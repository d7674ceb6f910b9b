package solver_test

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// nearKeys are parameters of every stage, of which some are off.
var nearKeys = []string{
	"lowerBallJointHeight", "upperBallJointHeight", "rideHeight", "camber", "caster", "toe",
	"tieRodOuterHeight", "tieRodInnerLateral", "steeringArmLength", "tieRodInnerHeight", "tieRodLength", "tieRodOuter.x",
}

// TestNearAndPathAgree assembles cars of each kind that are off as shops' are, and some that
// are far off, static toe set and as built, whatever else is held: the static position found
// to first order and corrected is that at the end of the path, within rounding. Of those
// that a shop makes hardly one takes the path.
func TestNearAndPathAgree(t *testing.T) {
	const same = 1e-11 // mm
	for i := range specimens {
		p := &specimens[i]
		t.Run(p.kind, func(t *testing.T) {
			d := p.design(t)
			a, err := solver.NewAssembler(d)
			if err != nil {
				t.Fatal(err)
			}
			base, err := a.Assemble(nil, solver.HoldAll)
			if err != nil {
				t.Fatal(err)
			}
			rods, r, near, shop := base.Rods(), seeded(11), 0, 0
			for n := range 200 {
				hold := []solver.Hold{solver.HoldAll, solver.HoldToe, solver.HoldCamber, 0}[r.IntN(4)]
				built := []*solver.Rods{nil, &rods}[r.IntN(2)]
				off := []float64{0.3, 1, 8}[n%3] // mm and, of angles, tenths of a degree
				var changes []solver.Change
				for _, key := range nearKeys {
					q, sides, err := solver.FindParameter(d, key)
					if err != nil || r.IntN(2) == 0 || key == "tieRodLength" && built == nil && hold&solver.HoldToe != 0 {
						continue
					}
					v := off * (2*r.Float64() - 1)
					if q.Absolute {
						v = a.Setting(q, solver.Left) + v*float64(solver.Deg(0.1))
					}
					changes = append(changes, solver.Change{Parameter: q, Sides: sides, Value: v})
				}
				if off < 8 {
					shop++
					if solver.IsNear(a, changes, hold, built) {
						near++
					}
				}
				x, err := a.AssembleBuilt(solver.BothSides, changes, hold, built)
				want, errPath := solver.StaticByPath(a, changes, hold, built)
				if (err == nil) != (errPath == nil) {
					t.Fatalf("car %d: %v, by the path %v", n, err, errPath)
				}
				if err != nil {
					continue
				}
				for u, pts := range solver.StaticPoints(x) {
					for k, v := range pts {
						if far := r3.Norm(r3.Sub(v, want[u][k])); !(far <= same) {
							t.Errorf("car %d, unit %d, point %d: %g mm from that at the end of the path", n, u, k, far)
						}
					}
				}
			}
			if near < shop*95/100 {
				t.Errorf("%d of %d cars that a shop makes are near", near, shop)
			}
		})
	}
}
