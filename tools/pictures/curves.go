package main

import (
	"context"
	"fmt"

	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/solver"
)

const (
	far      = 400.0 // travel beyond the demo car's locks, mm
	fineStep = 2.0   // mm
	degree   = 180 / 3.141592653589793
)

// lock returns the toe of the base car as far as it can be moved.
func lock(ctx context.Context, d *study.Document) ([]curve, error) {
	d.Travel = &study.Travel{Bump: far, Droop: far, Step: fineStep}
	k, err := swept(ctx, d, "base")
	return []curve{k}, err
}

// rates returns the derivatives of toe change by three parameters of one wheel.
func rates(_ context.Context, d *study.Document) ([]curve, error) {
	design, err := d.Design()
	if err != nil {
		return nil, err
	}
	var by []solver.Change
	for _, key := range []string{"tieRodOuterHeight", "tieRodInnerHeight", "steeringArmLength"} {
		c, err := solver.NewChange(design, key, 0)
		if err != nil {
			return nil, err
		}
		by = append(by, c)
	}
	return rateCurves(design, by, d.Window())
}

func rateCurves(design *solver.Design, by []solver.Change, w study.Travel) ([]curve, error) {
	cars, err := solver.NewAssembler(design)
	if err != nil {
		return nil, err
	}
	car, err := cars.Assemble(nil, solver.HoldAll)
	if err != nil {
		return nil, err
	}
	tangents, err := car.Tangents(by)
	if err != nil {
		return nil, err
	}
	travels, err := solver.Grid(w.Bump, w.Droop, fineStep)
	if err != nil {
		return nil, err
	}
	var curves [2]solver.Curve
	if err := car.Sweep(solver.NewWorkspace(), &solver.SweepInput{Travels: travels, By: tangents}, &curves); err != nil {
		return nil, err
	}
	left := &curves[solver.Left]
	rest := restOf(left)
	var out []curve
	for k := range by {
		c := curve{name: by[k].Parameter.Label}
		for i, p := range left.Positions {
			c.travels = append(c.travels, p.Travel)
			c.across = append(c.across, degree*(left.ToeRate(i, k)-left.ToeRate(rest, k)))
		}
		out = append(out, c)
	}
	return out, nil
}

// restOf returns the position at travel 0.
func restOf(c *solver.Curve) int {
	for i, p := range c.Positions {
		if p.Travel == 0 {
			return i
		}
	}
	return 0
}

// searches returns the toe change of the values found by each measure, for the car as
// it stands: without set-ups, weights and limits.
func searches(ctx context.Context, d *study.Document) ([]curve, error) {
	d.Search.Scenarios, d.Search.Weights, d.Search.Limits = nil, nil, nil
	d.Search.Window = d.Travel // which is what is drawn
	var out []curve
	for _, measure := range []string{"rms", "peak"} {
		d.Search.Minimise = measure
		found, err := engine.Search(ctx, d, engine.SearchOptions{})
		if err != nil {
			return nil, err
		}
		name := "least " + measure
		d.Candidates = []study.Candidate{{Name: name, Changes: found.Best.Values}}
		k, err := swept(ctx, d, name)
		if err != nil {
			return nil, err
		}
		out = append(out, k.fromRest())
	}
	return out, nil
}

// swept returns the left wheel's toe of one car, in degrees.
func swept(ctx context.Context, d *study.Document, name string) (curve, error) {
	out := curve{name: name}
	r, err := engine.Sweep(ctx, d, engine.SweepOptions{Candidate: name})
	if err != nil {
		return out, err
	}
	for _, s := range r.Sweeps {
		if s.Side != solver.Left.String() {
			continue
		}
		for _, p := range s.Positions {
			out.travels, out.across = append(out.travels, p.Travel), append(out.across, p.Toe)
		}
		return out, nil
	}
	return out, fmt.Errorf("%s was not swept", name)
}

// fromRest returns the curve less its value at travel 0.
func (c curve) fromRest() curve {
	rest := 0.0
	for i, travel := range c.travels {
		if travel == 0 {
			rest = c.across[i]
		}
	}
	for i := range c.across {
		c.across[i] -= rest
	}
	return c
}
