package referee

import (
	"context"
	"fmt"
	"math"

	"toewright/optimize"
	"toewright/optimize/nlp"
	"toewright/solver"
)

// Front is one trade-off that is held against one that is searched anew at each level.
type Front struct {
	Name     string
	TradeOff *optimize.TradeOff
}

// levels are those of the fronts.
const levels = 6

// Fronts returns the trade-offs of all problems against the distance from the base car's
// parts and, of every other one that is steered, against its Ackermann error.
func Fronts(dir string) ([]Front, error) {
	problems, err := Problems(dir)
	if err != nil {
		return nil, err
	}
	aims := []optimize.Aim{
		{Name: "stock", Scale: 1},
		{Name: "ackermann", Scale: 1, Misses: len(solver.Sides), Of: ackermann},
	}
	var out []Front
	for i := range problems {
		p := problems[i].Search
		for _, aim := range aims {
			if aim.Of != nil && (i%2 == 0 || math.IsNaN(p.AimAt(&aim, make([]float64, len(p.Free))))) {
				continue
			}
			t := &optimize.TradeOff{ToeSearch: *p, Aim: aim, Levels: levels}
			out = append(out, Front{Name: fmt.Sprintf("%s, %s", problems[i].Name, aim.Name), TradeOff: t})
		}
	}
	return out, nil
}

// ackermann writes by how much the percentage of each hand, 20 degrees from straight ahead,
// is off that of wheels that roll without scrub, and its derivatives.
func ackermann(car *solver.Axle, ws *solver.Workspace, misses []float64, by *solver.Tangents, rates [][]float64) bool {
	exact := by != nil
	for i, s := range solver.Sides {
		misses[i] = math.NaN()
		angle := solver.Deg(20)
		if s == solver.Right {
			angle = -angle
		}
		p, err := car.SteerFor(ws, s, angle, solver.Attitude{})
		if err != nil {
			exact = false
			continue
		}
		percent, err := car.Ackermann(p.Turn())
		if err == nil {
			misses[i] = percent - 100
		}
		if exact = exact && err == nil; !exact {
			continue
		}
		var list []solver.SteerRate
		list, exact = car.SteerRates(ws, solver.Attitude{Steer: p.Input}, by)
		p.HoldWheel(s, list)
		for k := range list {
			rates[i][k] = car.AckermannRate(p.Turn(), &list[k])
		}
	}
	return exact
}

// Lost returns the designs of a front searched anew at each level, from as many spread
// starts as a search has, that the usual front has no match for: one with as little of the
// aim and as little toe change, within a ten-thousandth. Both fronts are returned too.
func (f *Front) Lost() (lost, warm, cold []optimize.Design, err error) {
	ctx := context.Background()
	if warm, err = f.TradeOff.Front(ctx, nil); err != nil {
		return nil, nil, nil, err
	}
	var none *nlp.Settings
	every := none.WithDefaults(len(f.TradeOff.Free))
	if cold, err = f.TradeOff.Front(ctx, &nlp.Settings{Restarts: every.Restarts}); err != nil {
		return nil, nil, nil, err
	}
	for _, c := range cold {
		found := false
		for _, w := range warm {
			found = found || w.Aim <= c.Aim+1e-4*(1+c.Aim) && w.Value <= c.Value*(1+1e-4)+1e-9
		}
		if !found {
			lost = append(lost, c)
		}
	}
	return lost, warm, cold, nil
}
