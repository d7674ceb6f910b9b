package optimize

import (
	"testing"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// limitsOf are those of a model as residuals.
type limitsOf struct{ nlp.Model }

func (l limitsOf) Size() nlp.Size {
	size := l.Model.Size()
	return nlp.Size{Variables: size.Variables, Residuals: size.Limits}
}

func (l limitsOf) Evaluate(x []float64, v *nlp.Values) bool {
	all := nlp.NewValues(l.Model.Size())
	all.G, all.JG = v.R, v.JR
	if v.JR == nil {
		all.JR = nil
	}
	return l.Model.Evaluate(x, &all)
}

// TestHeldModelDerivatives holds those of a search with an aim held against differences: of
// the distance from the base car, and of aims that have derivatives of their own and none.
func TestHeldModelDerivatives(t *testing.T) {
	rated := 0
	gain := func(exact bool) func(*solver.Axle, *solver.Workspace, []float64, *solver.Tangents, [][]float64) bool {
		return func(car *solver.Axle, ws *solver.Workspace, misses []float64, by *solver.Tangents, rates [][]float64) bool {
			var c solver.SteerCurve
			if err := car.Steer(ws, &solver.SteerInput{Inputs: []float64{5}}, &c); err != nil {
				t.Fatal(err)
			}
			misses[0], misses[1] = 1000*c.Points[0].MeanRate(), -2000*c.Points[0].MeanRate()
			if by == nil || !exact || !car.MeanRateRates(ws, solver.Attitude{Steer: 5}, by, rates[0]) {
				return false
			}
			rated++
			for k, r := range rates[0] {
				rates[0][k], rates[1][k] = 1000*r, -2000*r
			}
			return true
		}
	}
	for _, aim := range []Aim{
		{Name: "stock", Scale: 2},
		{Name: "gain", Scale: 3, Misses: 2, Of: gain(true)},
		{Name: "gain, differenced", Scale: 3, Misses: 2, Of: gain(false)},
	} {
		t.Run(aim.Name, func(t *testing.T) {
			toe := newToeModel(twoScenarios(t))
			p := &TradeOff{ToeSearch: *twoScenarios(t), Aim: aim}
			checkJacobian(t, limitsOf{newHeldModel(toe, newAimModel(p, toe), 0.5)}, []float64{-7, 3}, []float64{50, 50})
		})
	}
	if rated == 0 {
		t.Error("no derivatives were taken from an aim")
	}
}
