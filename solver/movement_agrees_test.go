package solver_test

import (
	"math"
	"testing"

	"toewright/solver"
)

// agreedMovement is the largest difference, as a share of the figure's largest value in
// the sweep, of how a wheel moves by two ways: some 1e-12 by rounding, more the nearer a
// linkage is to a lock.
const agreedMovement = 1e-9

// figuresOfMovement are what a sweep says of one by its axis and its movement.
func figuresOfMovement(p *solver.Position) map[string]float64 {
	n := &p.Instant
	return map[string]float64{
		"caster": float64(p.Caster), "kingpin inclination": float64(p.KingpinInclination),
		"scrub radius": p.ScrubRadius, "trail": p.Trail,
		"toe rate": n.ToeRate, "camber rate": n.CamberRate, "toe curvature": n.ToeCurvature,
		"contact rate x": n.ContactRate.X, "contact rate y": n.ContactRate.Y, "contact rate z": n.ContactRate.Z,
		"roll centre": n.RollCentreHeight,
	}
}

// TestMovementByTwoWays compares, on random linkages of every kind, the movement of a
// knuckle in closed form with that by its five constraints, that of a solid axle by
// elimination with that by the general factors, and the screw axis of a multi-link corner
// by those constraints with that by its four rods. Geometry invented.
func TestMovementByTwoWays(t *testing.T) {
	r := seeded(3)
	other := func(x *solver.Axle, in solver.SweepInput) (*solver.Axle, solver.SweepInput) {
		switch kind := x.Design().Kind.Name; {
		case kind == "solid-axle":
			return solver.WithoutSplit(x), in
		case kind == "multi-link":
			in.Instant = false
			return x, in
		}
		return solver.WithoutClosedForm(x), in
	}
	a, b := solver.NewWorkspace(), solver.NewWorkspace()
	compared := map[string]int{}
	for i := range 200 * len(specimens) {
		kind := &specimens[i%len(specimens)]
		x, err := solver.Assemble(randomDesign(t, r, kind), nil, solver.HoldAll)
		if err != nil {
			continue
		}
		in := solver.SweepInput{Travels: []float64{-60 * r.Float64(), 0, 60 * r.Float64()}, Ground: true, Instant: true, Motion: solver.Motion(i / len(specimens) % 4)}
		if kind.gear.Kind == solver.Rack {
			in.From.Steer = 30 * (2*r.Float64() - 1)
		}
		y, without := other(x, in)
		var p, q [2]solver.Curve
		if x.Sweep(a, &in, &p) != nil || y.Sweep(b, &without, &q) != nil {
			continue
		}
		if kind.kind == "solid-axle" && solver.SplitServes(a) == solver.SplitServes(b) {
			continue // both by the general factors: the elimination is unfit
		}
		for _, s := range solver.Sides {
			compareMovements(t, i, p[s].Positions, q[s].Positions, without.Instant)
			compared[kind.kind] += len(p[s].Positions)
		}
	}
	for _, p := range specimens {
		if compared[p.kind] < 500 {
			t.Errorf("%s: only %d positions compared", p.kind, compared[p.kind])
		}
	}
}

func compareMovements(t *testing.T, linkage int, a, b []solver.Position, rates bool) {
	t.Helper()
	if len(a) != len(b) {
		t.Fatalf("linkage %d: %d positions and %d", linkage, len(a), len(b))
	}
	scale := map[string]float64{}
	for i := range a {
		for name, v := range figuresOfMovement(&a[i]) {
			scale[name] = math.Max(scale[name], math.Abs(v))
		}
	}
	for i := range a {
		p, q := figuresOfMovement(&a[i]), figuresOfMovement(&b[i])
		for name, v := range p {
			if q[name] == 0 && !rates {
				continue // not asked for
			}
			if !(math.Abs(v-q[name]) <= agreedMovement*scale[name]+1e-15) {
				t.Errorf("linkage %d, travel %.4g: %s is %.15g by one way, %.15g by the other", linkage, a[i].Travel, name, v, q[name])
			}
		}
	}
}
