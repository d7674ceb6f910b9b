package nlp

import (
	"context"
	"math"
)

// LeastSquaresSettings tune [LeastSquares]. The zero value, and nil, work.
type LeastSquaresSettings struct {
	// Iterations is how many steps may be tried. 0 means 500.
	Iterations int
	// Step is the step at which the fit has converged, relative to the parameters in
	// units of the scales and to the root of the cost. 0 means 1e-11.
	Step float64
	// Progress, if not nil, is called before each step with the cost so far.
	Progress func(iteration int, cost float64)
}

const (
	defaultFitIterations = 500
	// firstDamping is the first Levenberg-Marquardt parameter, relative to the
	// squared norms of the Jacobian's columns: little, since fits start near.
	firstDamping = 1e-3
	// maxDamping is where steps have become too short to try.
	maxDamping = 1e16
	// fitStep is the step, relative to the parameters in units of the scales,
	// at which a fit has converged that says no other. Rounding in the residuals allows about
	// 1e-13 in well-posed fits.
	fitStep = 1e-11
	// fitRounding is the relative change of cost that may be rounding: predictions
	// below it are taken on trust.
	fitRounding = 1e-13
)

// LeastSquares estimates parameters from readings and priors by the
// Levenberg-Marquardt method (Nielsen's damping; a robust loss by reweighting).
// It returns a [*ProblemError] for readings that do not fit together; every
// other ending is the Status of the estimate, NotEvaluable where the model
// cannot be evaluated at the start.
func LeastSquares(ctx context.Context, r Readings, s *LeastSquaresSettings) (Estimate, error) {
	if err := r.check(); err != nil {
		return Estimate{}, err
	}
	var settings LeastSquaresSettings
	if s != nil {
		settings = *s
	}
	if settings.Iterations <= 0 {
		settings.Iterations = defaultFitIterations
	}
	f := newFitter(&r)
	if f.least = settings.Step; f.least <= 0 {
		f.least = fitStep
	}
	status := f.run(ctx, settings)
	return f.estimate(status), nil
}

// fitter is the state of one fit.
type fitter struct {
	now, trial *normal
	damping    float64
	growth     float64   // of the damping at the next failure
	norms      []float64 // largest norm so far of each column
	least      float64   // relative step that is small
	iterations int
	count      int // evaluations
}

func newFitter(r *Readings) *fitter {
	f := &fitter{
		now: newNormal(r), trial: newNormal(r),
		damping: firstDamping, growth: 2,
		norms: make([]float64, len(r.Start)),
	}
	copy(f.now.x, r.Start)
	return f
}

// run makes steps until one of the reasons to stop holds.
func (f *fitter) run(ctx context.Context, s LeastSquaresSettings) Status {
	if ctx.Err() != nil {
		return Cancelled
	}
	if !f.evaluate(f.now) {
		return NotEvaluable
	}
	for f.iterations < s.Iterations {
		if ctx.Err() != nil {
			return Cancelled
		}
		if s.Progress != nil {
			s.Progress(f.iterations, f.now.cost)
		}
		f.iterations++
		if status := f.step(); status != NotRun {
			return status
		}
	}
	return IterationLimit
}

func (f *fitter) evaluate(n *normal) bool {
	f.count++
	return n.evaluate()
}

// step tries one step. It returns NotRun to go on.
func (f *fitter) step() Status {
	f.updateNorms()
	d := f.now.solve(f.damping, f.norms)
	predicted := f.now.predictedReduction(d)
	for j, v := range d {
		f.trial.x[j] = f.now.x[j] + v
	}
	small := f.small(d)
	if !f.evaluate(f.trial) || !f.accept(predicted) {
		return f.reject(small)
	}
	f.now, f.trial = f.trial, f.now
	if small {
		return Converged
	}
	return NotRun
}

// reject raises the damping after a step that failed. A step so small that it
// cannot matter is the end of a converged fit.
func (f *fitter) reject(small bool) Status {
	if small {
		return Converged
	}
	f.damping *= f.growth
	f.growth *= 2
	if !(f.damping < maxDamping) {
		return Stalled
	}
	return NotRun
}

// accept judges the trial by what it gained of what was predicted, and lowers the damping
// for a good one.
func (f *fitter) accept(predicted float64) bool {
	gained := f.now.cost - f.trial.cost
	rounding := fitRounding * f.now.cost
	if predicted <= rounding && math.Abs(gained) <= rounding {
		gained = predicted
	}
	if !(gained > 0) {
		return false
	}
	surplus := 2*gained/predicted - 1
	f.damping *= math.Max(1.0/3, 1-surplus*surplus*surplus)
	f.growth = 2
	return true
}

// updateNorms keeps the largest norm of each column, which makes the damping
// independent of the parameters' units.
func (f *fitter) updateNorms() {
	for j := range f.norms {
		f.norms[j] = math.Max(f.norms[j], f.now.columnNorm(j))
	}
}

// small reports whether a step is too small to matter.
func (f *fitter) small(d []float64) bool {
	step, size := 0.0, 0.0
	for j, v := range d {
		step = math.Hypot(step, f.norms[j]*v)
		size = math.Hypot(size, f.norms[j]*f.now.x[j])
	}
	// The second term stands for parameters that are zero: a step that changes
	// the standardised residuals by this little changes nothing.
	return step <= f.least*math.Max(size, math.Sqrt(f.now.cost))
}
