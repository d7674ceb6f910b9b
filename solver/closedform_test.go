package solver_test

import (
	"flag"
	"math"
	"runtime"
	"testing"

	"toewright/solver"
)

// linkagesCompared is the number of random linkages on which both solvers must
// agree; a tenth of it in a short run or under WebAssembly, ten times it with -long.
const linkagesCompared = 100_000

var long = flag.Bool("long", false, "compare solvers on a million linkages")

// Limits of agreement of the two solvers. Each holds link lengths to some 1e-10
// mm, so their angles may differ by that times the linkage's condition.
const (
	agreedAngle = 1e-9 // deg, for a linkage as well conditioned as a usual one
	usualGain   = 0.02 // rad by mm
	agreedReach = 1e-6 // mm
	unsureReach = 0.01 // mm, where two branches all but meet and the follower says so
)

// closedSpecimens are those of a kind that is solved in closed form.
var closedSpecimens = []int{0, 1, 2, 6, 7}

// TestClosedFormAgrees compares the closed forms of double wishbone, strut and swing arm
// with the general solver, which shares no equation with them, on random
// linkages at random travels and steering. Geometry invented.
func TestClosedFormAgrees(t *testing.T) {
	n := linkagesCompared
	switch {
	case *long:
		n *= 10
	case testing.Short() || runtime.GOARCH == "wasm":
		n /= 10
	}
	r := seeded(1)
	ws := solver.NewWorkspace()
	var closed, general [2]solver.Curve
	compared := 0
	for i := range n {
		p := &specimens[closedSpecimens[i%len(closedSpecimens)]]
		d := randomDesign(t, r, p)
		x, err := solver.Assemble(d, nil, solver.HoldAll)
		if err != nil {
			continue // points that make no axle: an arm without rise, say
		}
		if !solver.HasClosedForm(x) {
			t.Fatalf("linkage %d: a %s without closed form", i, p.kind)
		}
		in := solver.SweepInput{Travels: []float64{-90 * r.Float64(), 90 * r.Float64()}, Sides: solver.LeftOnly}
		if p.gear.Kind == solver.Rack {
			in.From.Steer = 40 * (2*r.Float64() - 1)
		}
		errClosed := x.Sweep(ws, &in, &closed)
		errGeneral := solver.WithoutClosedForm(x).Sweep(ws, &in, &general)
		if (errClosed == nil) != (errGeneral == nil) {
			t.Fatalf("linkage %d: closed form says %v, general solver %v", i, errClosed, errGeneral)
		}
		if errClosed == nil {
			compared += agree(t, i, x, &in, &closed[solver.Left], &general[solver.Left])
		}
	}
	if compared < n {
		t.Errorf("only %d positions of %d linkages could be compared", compared, n)
	}
}

// agree compares two curves of one corner and returns the number of positions.
func agree(t *testing.T, i int, x *solver.Axle, in *solver.SweepInput, a, b *solver.Curve) int {
	t.Helper()
	if len(a.Positions) != len(b.Positions) {
		t.Errorf("linkage %d: closed form reaches %d positions, general solver %d", i, len(a.Positions), len(b.Positions))
		return 0
	}
	limit := agreedReach
	if a.Reach.BumpUnsure || a.Reach.DroopUnsure || b.Reach.BumpUnsure || b.Reach.DroopUnsure {
		limit = unsureReach
	}
	near(t, "bump reach", a.Reach.Bump, b.Reach.Bump, limit)
	near(t, "droop reach", a.Reach.Droop, b.Reach.Droop, limit)
	for k := range a.Positions {
		p, q := &a.Positions[k], &b.Positions[k]
		off := math.Max(math.Abs(float64(p.Toe-q.Toe)), math.Max(math.Abs(float64(p.Camber-q.Camber)), math.Abs(float64(p.Caster-q.Caster))))
		if solver.Angle(off).Degrees() <= agreedAngle {
			continue
		}
		gain := solver.ErrorGain(x, solver.Left, in.From.Steer, p.Travel)
		if !(solver.Angle(off).Degrees() <= agreedAngle*gain/usualGain) {
			t.Errorf("linkage %d, steer %.4g, travel %.4g: the solvers differ by %.3g deg, condition %.3g rad/mm", i, in.From.Steer, p.Travel, solver.Angle(off).Degrees(), gain)
		}
	}
	return len(a.Positions)
}

// TestClosedFormServes follows a healthy corner in closed form from end to end,
// and not past a lock.
func TestClosedFormServes(t *testing.T) {
	for _, i := range closedSpecimens {
		x := assembled(t, specimens[i].design(t), nil)
		ws := solver.NewWorkspace()
		in := solver.SweepInput{Sides: solver.LeftOnly}
		for _, tt := range []struct {
			reach, step float64
			want        bool
		}{{80, 4, true}, {60, 20, true}, {1500, 20, false}} {
			in.Travels, _ = solver.Grid(tt.reach, tt.reach, tt.step)
			var out [2]solver.Curve
			if err := x.Sweep(ws, &in, &out); err != nil {
				t.Fatal(err)
			}
			if got := solver.InClosedForm(ws); got != tt.want {
				t.Errorf("%s to %g mm by %g: in closed form %t, want %t", specimens[i].kind, tt.reach, tt.step, got, tt.want)
			}
		}
	}
}
