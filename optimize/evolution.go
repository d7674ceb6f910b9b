package optimize

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"
	gopt "gonum.org/v1/gonum/optimize"
)

const (
	// evolutionSpread is the first standard deviation of the samples, in the
	// unit box: most of them fall inside it.
	evolutionSpread = 0.3
	// brokenRank puts points that break a limit behind all others, as a
	// multiple of the value at the start.
	brokenRank = 1e6
)

// evolution looks for a good basin by CMA-ES.
type evolution struct {
	box    *unitBox
	scale  *scale
	values Values
	inside []float64 // scratch: the sample moved into the unit box
	broken float64   // added to the violation of points that break a limit
	report func()

	best  []float64 // best point, nil before there is one
	merit float64   // its merit
}

func newEvolution(box *unitBox, s *scale, start float64, report func()) *evolution {
	size := box.model.Size()
	rank := brokenRank * start
	if !(rank > 0) {
		rank = brokenRank
	}
	return &evolution{
		box: box, scale: s, values: newValues(size), inside: make([]float64, size.Variables),
		broken: rank, report: report, merit: math.Inf(1),
	}
}

// run returns the best point of a run that starts in the middle of the box, or
// nil where the model could be evaluated at none.
func (e *evolution) run(evaluations int, seed uint64) []float64 {
	middle := make([]float64, len(e.box.variables))
	for j := range middle {
		middle[j] = 0.5
	}
	method := &gopt.CmaEsChol{
		// gonum draws its samples by the Cholesky factor alone, so the spread
		// must stand there and the step size be 1.
		InitStepSize: 1,
		InitCholesky: ball(len(middle), evolutionSpread),
		Src:          rand.NewPCG(seed, evolutionStream),
	}
	// How the method ends, by the limit as a rule, does not matter: e.best holds
	// what it found.
	_, _ = gopt.Minimize(
		gopt.Problem{Func: e.evaluate, Status: e.status},
		middle,
		&gopt.Settings{FuncEvaluations: evaluations, Converger: gopt.NeverTerminate{}},
		method,
	)
	return e.best
}

// ball returns the Cholesky factor of the covariance of n independent variables
// with the same standard deviation.
func ball(n int, sd float64) *mat.Cholesky {
	covariance := mat.NewSymDense(n, nil)
	for j := range n {
		covariance.SetSym(j, j, sd*sd)
	}
	var factor mat.Cholesky
	factor.Factorize(covariance) // diagonal and positive
	return &factor
}

// status stops the method where the run must stop.
func (e *evolution) status() (gopt.Status, error) {
	if e.box.stopped() != NotRun {
		return gopt.FunctionEvaluationLimit, nil
	}
	return gopt.NotTerminated, nil
}

// evaluate returns the merit of a sample: that of the nearest point of the box,
// and more the farther the sample lies outside.
func (e *evolution) evaluate(sample []float64) float64 {
	excess := 0.0
	for j, v := range sample {
		e.inside[j] = clamp(v, 0, 1)
		excess += (v - e.inside[j]) * (v - e.inside[j])
	}
	e.report()
	if !e.box.evaluateValues(e.inside, &e.values) {
		return math.Inf(1)
	}
	merit := e.scale.value(e.values.R)
	if broken := e.values.violation(); broken > 0 {
		merit = e.broken + broken
	}
	if merit < e.merit {
		e.merit = merit
		e.best = append(e.best[:0], e.inside...)
	}
	return merit * (1 + excess)
}
