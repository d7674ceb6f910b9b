package nlp

import (
	"context"
	"math"
	"slices"

	gonum "gonum.org/v1/gonum/optimize"
)

// NelderMead is a search without derivatives by gonum's method of Nelder and Mead, for
// figures whose slopes are noisy or have kinks.
type NelderMead struct {
	Value       func([]float64) float64 // NaN and +Inf where there is none
	Edge        float64                 // first length of the simplex's edges
	Evaluations int                     // evaluations
	Gain        float64                 // share of the value that is worth going on for
}

// nelderMeadPatience is the number of steps after which a simplex that gains nothing
// stops.
const nelderMeadPatience = 20

// Run returns the best point from start on, start itself where nothing is better or
// it has no value.
func (d *NelderMead) Run(ctx context.Context, start []float64) ([]float64, float64) {
	best, least := slices.Clone(start), math.Inf(1)
	problem := gonum.Problem{
		Func: func(x []float64) float64 {
			v := d.Value(x)
			if math.IsNaN(v) {
				return math.Inf(1)
			}
			if v < least {
				copy(best, x)
				least = v
			}
			return v
		},
		Status: func() (gonum.Status, error) {
			if err := ctx.Err(); err != nil {
				return gonum.RuntimeLimit, nil
			}
			return gonum.NotTerminated, nil
		},
	}
	settings := gonum.Settings{
		FuncEvaluations: d.Evaluations,
		Converger:       &gonum.FunctionConverge{Relative: d.Gain, Iterations: nelderMeadPatience},
	}
	// An error is of a start without a value, which best and least then say.
	_, _ = gonum.Minimize(problem, start, &settings, &gonum.NelderMead{SimplexSize: d.Edge})
	return best, least
}
