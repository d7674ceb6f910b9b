package nlp_test

import (
	"context"
	"fmt"
	"math"

	"toewright/optimize/nlp"
)

// sine is a + bt - sin t at a few places: the error of a straight line.
type sine struct{ t []float64 }

func (s sine) Size() nlp.Size {
	return nlp.Size{Variables: 2, Residuals: len(s.t)}
}

func (s sine) Evaluate(x []float64, v *nlp.Values) bool {
	for i, t := range s.t {
		v.R[i] = x[0] + x[1]*t - math.Sin(t)
		if v.JR != nil {
			v.JR.SetRow(i, []float64{1, t})
		}
	}
	return true
}

// The straight line nearest to a sine, by the largest error and with its slope
// held to at most 0.6: the height is (sin 1 - 0.6)/2, where 0 and 1 are worst.
func ExampleRun() {
	problem := nlp.Problem{
		Model: sine{t: []float64{0, 0.25, 0.5, 0.75, 1, 1.25, 1.5}},
		Variables: []nlp.Variable{
			{Name: "height", Min: -1, Max: 1},
			{Name: "slope", Min: 0, Max: 0.6},
		},
		Objective: nlp.Objective{Measure: nlp.Peak},
	}
	result, err := nlp.Run(context.Background(), problem, &nlp.Settings{Seed: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v: height %.6f, slope %.6f %v\n", result.Status, result.X[0], result.X[1], result.Bounds[1])
	fmt.Printf("largest error %.6f, found by %d of %d searches\n", result.Value, result.Agreeing, result.Searches)
	// Output:
	// converged: height 0.120735, slope 0.600000 at maximum
	// largest error 0.120735, found by 24 of 24 searches
}

// A straight line through readings with a standard deviation of 0.1, of which
// one is a gross error.
func ExampleLeastSquares() {
	t := []float64{0, 1, 2, 3, 4, 5, 6, 7}
	y := []float64{1.02, 1.98, 3.05, 3.96, 15, 6.01, 7.03, 7.95}
	line := lineModel{t, y, 0.1}
	fit, err := nlp.LeastSquares(context.Background(), nlp.Readings{
		Model: line,
		Start: []float64{0, 0},
		Loss:  nlp.StudentT{},
	}, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v: %.2f + %.2f t\n", fit.Status, fit.X[0], fit.X[1])
	for i, w := range fit.Weights {
		if w < 0.01 {
			fmt.Printf("reading %d is %.0f standard deviations off\n", i, -fit.Residuals[i])
		}
	}
	// Output:
	// converged: 1.01 + 1.00 t
	// reading 4 is 100 standard deviations off
}

type lineModel struct {
	t, y []float64
	sd   float64
}

func (l lineModel) Size() nlp.Size {
	return nlp.Size{Variables: 2, Residuals: len(l.t)}
}

func (l lineModel) Evaluate(x []float64, v *nlp.Values) bool {
	for i, t := range l.t {
		v.R[i] = (x[0] + x[1]*t - l.y[i]) / l.sd
		if v.JR != nil {
			v.JR.SetRow(i, []float64{1 / l.sd, t / l.sd})
		}
	}
	return true
}
