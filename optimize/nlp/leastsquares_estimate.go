package nlp

import "gonum.org/v1/gonum/mat"

// Readings is what [LeastSquares] fits: residuals of readings against a model,
// and what was known of the parameters before.
type Readings struct {
	// Model gives the residual of each reading, (predicted - read) divided by
	// its standard deviation. It must have no limits.
	Model Model
	// Start is where the fit begins, one value for each of the model's
	// variables. The model must be evaluable there.
	Start []float64
	// Priors has one entry for each variable; nil means no prior at all.
	Priors []Prior
	// Loss of the readings, not of the priors; nil means [Squares].
	Loss Loss
}

// Prior is what is known of a parameter before the readings: a normal
// distribution. The zero value says nothing.
type Prior struct {
	Mean float64
	SD   float64 // standard deviation > 0, in the parameter's unit; 0 for no prior
}

// Estimate is the outcome of [LeastSquares].
type Estimate struct {
	X []float64 // the parameters
	// Covariance of the parameters, as far as the linearised model and the
	// stated standard deviations are right: the inverse of JᵀWJ with the priors
	// in it, W the weights. Nil where the status is RankDeficient or there is
	// nothing to say. With a robust loss it is an approximation.
	Covariance *mat.SymDense
	// ChiSquare is the sum of the squared residuals, those of the priors
	// included, without regard to the loss.
	ChiSquare float64
	// Freedom is readings and priors less parameters.
	Freedom int
	// Cost is what the fit minimised: the losses and the squares of the priors.
	// For plain squares it is the same as ChiSquare.
	Cost float64

	Residuals []float64 // of the readings, in standard deviations
	Weights   []float64 // of the readings, by the loss; 1 for plain squares
	// Leverage of each reading is the share of its own error that the fit
	// follows, from 0 to 1. Its residual has standard deviation √(1 - leverage).
	Leverage []float64

	Rank        int // of the scaled Jacobian with the priors
	Status      Status
	Iterations  int
	Evaluations int
}

// check returns a [*ProblemError] for readings that do not fit together.
func (r *Readings) check() error {
	if r.Model == nil {
		return ProblemErrorf("the readings have no model")
	}
	size := r.Model.Size()
	if err := size.check(); err != nil {
		return err
	}
	if size.Limits > 0 {
		return ProblemErrorf("model has %d limits, a fit takes none", size.Limits)
	}
	if len(r.Start) != size.Variables || !AllFinite(r.Start) {
		return ProblemErrorf("start is %v, want %d finite values", r.Start, size.Variables)
	}
	if r.Priors != nil && len(r.Priors) != size.Variables {
		return ProblemErrorf("%d priors for %d variables, want one for each", len(r.Priors), size.Variables)
	}
	for i, p := range r.Priors {
		if !(p.SD >= 0) || !AllFinite([]float64{p.SD, p.Mean}) {
			return ProblemErrorf("prior %d has mean %g and standard deviation %g, want finite numbers and at least 0", i, p.Mean, p.SD)
		}
	}
	return nil
}
