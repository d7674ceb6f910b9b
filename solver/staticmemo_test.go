package solver_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"toewright/solver"
)

// memoValues are what each parameter is set to in turn, mm or degrees: few, so that
// positions come again.
var memoValues = map[string][]float64{
	"lowerBallJointHeight": {0, 4},
	"upperBallJointHeight": {0, 6, -6},
	"rideHeight":           {0, -15},
	"camber":               {-1, -0.5},
	"tieRodOuterHeight":    {0, -3, 5},
	"tieRodInnerLateral":   {0, 2},
	"steeringArmLength":    {0, -4},
	"tieRodInnerHeight":    {0, 3},
	"tieRodOuter.x":        {0, 1.5},
}

// TestRememberedPositionsAreTheSame assembles many cars of each kind by one
// assembler, which remembers static positions, and each by an assembler of its own:
// the cars are the same to the last bit, whatever of toe, camber and caster is held.
func TestRememberedPositionsAreTheSame(t *testing.T) {
	for i := range specimens {
		p := &specimens[i]
		t.Run(p.kind, func(t *testing.T) {
			d := p.design(t)
			shared, err := solver.NewAssembler(d)
			if err != nil {
				t.Fatal(err)
			}
			r := seeded(3)
			for n := range 150 {
				hold := []solver.Hold{solver.HoldAll, solver.HoldToe, solver.HoldCamber}[r.IntN(3)]
				changes := memoChanges(t, d, func(n int) int { return r.IntN(n) })
				got, err := shared.Assemble(changes, hold)
				alone, errAlone := solver.Assemble(d, changes, hold)
				if (err == nil) != (errAlone == nil) {
					t.Fatalf("car %d: %v, by itself %v", n, err, errAlone)
				}
				if err == nil {
					sameCurves(t, n, got, alone)
				}
			}
		})
	}
}

// memoChanges returns some changes of a design, chosen by pick.
func memoChanges(t *testing.T, d *solver.Design, pick func(int) int) []solver.Change {
	t.Helper()
	var out []solver.Change
	for _, key := range []string{"lowerBallJointHeight", "upperBallJointHeight", "rideHeight", "camber", "tieRodOuterHeight", "tieRodInnerLateral", "steeringArmLength", "tieRodInnerHeight", "tieRodOuter.x"} {
		if pick(2) == 0 {
			continue
		}
		side := []string{"", "@left", "@right"}[pick(3)]
		values := memoValues[key]
		v := values[pick(len(values))]
		p, sides, err := solver.FindParameter(d, key+side)
		if err != nil {
			continue // a kind that has no such part
		}
		if p.Quantity == solver.AngleQuantity {
			v = float64(solver.Deg(v))
		}
		out = append(out, solver.Change{Parameter: p, Sides: sides, Value: v})
	}
	return out
}

// sameCurves compares the movement of two cars to the last bit.
func sameCurves(t *testing.T, n int, a, b *solver.Axle) {
	t.Helper()
	in := solver.SweepInput{Travels: []float64{-30, 0, 30}, Sides: solver.BothSides}
	var x, y [2]solver.Curve
	errA, errB := a.Sweep(solver.NewWorkspace(), &in, &x), b.Sweep(solver.NewWorkspace(), &in, &y)
	if (errA == nil) != (errB == nil) {
		t.Fatalf("car %d: %v, by itself %v", n, errA, errB)
	}
	for _, side := range solver.Sides {
		if diff := cmp.Diff(x[side].Positions, y[side].Positions, cmpopts.EquateNaNs()); diff != "" {
			t.Fatalf("car %d, %s: remembered and by itself (-/+):\n%.600s", n, side, diff)
		}
	}
}
