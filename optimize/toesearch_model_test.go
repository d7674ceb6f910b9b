package optimize

import (
	"testing"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// twoScenarios asks for both sides of the invented car in two set-ups, one of them
// steered, with a target for each side.
func twoScenarios(t *testing.T) *ToeSearch {
	t.Helper()
	a := inventedCar(t)
	free := func(key string) Free {
		p, sides, err := solver.FindParameter(a.Design(), key)
		if err != nil {
			t.Fatal(err)
		}
		return Free{Parameter: p, Sides: sides, Min: -20, Max: 20}
	}
	return &ToeSearch{
		Base: a, Travels: []float64{-30, 0, 20}, Judge: solver.BothSides,
		Free: []Free{free("tieRodOuterHeight"), free("tieRodInner.y@right")},
		Targets: [2]Target{
			{Travel: []float64{-30, 20}, Change: []solver.Angle{0.001, 0.002}},
			{Travel: []float64{0}, Change: []solver.Angle{-0.003}},
		},
		Scenarios: []Scenario{
			{Name: "as it is"},
			{Name: "steered", Changes: []solver.Change{part(t, a, "caster", 6)}, Hold: solver.HoldAll, From: solver.Attitude{Steer: 9}},
		},
	}
}

// TestToeModelResiduals compares every residual with a car swept by hand: scenarios
// one after the other, in each the left side and the right.
func TestToeModelResiduals(t *testing.T) {
	p := twoScenarios(t)
	m := newToeModel(p)
	v := nlp.NewValues(m.Size())
	x := []float64{-7, 3}
	if !m.Evaluate(x, &v) {
		t.Fatal("the model cannot be evaluated")
	}
	row := 0
	for _, s := range p.Scenarios {
		changes := append(append([]solver.Change(nil), s.Changes...), p.Free[0].change(x[0]), p.Free[1].change(x[1]))
		car, err := p.Base.Assemble(changes, s.Hold)
		if err != nil {
			t.Fatal(err)
		}
		var curves [2]solver.Curve
		if err := car.Sweep(solver.NewWorkspace(), &solver.SweepInput{Travels: p.Travels, From: s.From}, &curves); err != nil {
			t.Fatal(err)
		}
		for _, side := range solver.Sides {
			at := curves[side].Positions
			for i, travel := range p.Travels {
				want := float64(at[i].Toe - at[1].Toe - p.Targets[side].At(travel))
				if !near(v.R[row], want, 1e-12) {
					t.Errorf("%s, %s side, travel %g: residual %.9g, want %.9g", s.Name, side, travel, v.R[row], want)
				}
				row++
			}
		}
	}
	if row != len(v.R) {
		t.Errorf("%d residuals, want %d", len(v.R), row)
	}
}

func TestToeModelDerivatives(t *testing.T) {
	checkJacobian(t, newToeModel(twoScenarios(t)), []float64{-7, 3}, []float64{50, 50})
}
