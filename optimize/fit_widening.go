package optimize

import (
	"context"
	"math"
	"slices"

	"toewright/optimize/nlp"
)

// widenings are by how many times default priors may be widened: a tape's tolerance to
// that of a drawing of another car.
var widenings = []float64{1, 2, 4, 8}

// leastEvidence is by how much widened priors must make the readings likelier than those
// by default, as twice the logarithm, to be taken: e³ times, which chance makes of one
// sound car in twenty or so.
const leastEvidence = 6.0

// WidenPriors states the priors by default, where none are given, as wide as the
// readings ask for, and returns by how many times: by what makes the readings most likely
// before any car is known (the evidence of a model; by Laplace's approximation, from
// memory), 1 where that is no clear gain. Where priors are given they stay, and it is 1.
// Readings that even the widest cannot follow do not count.
func (p *GaugeFit) WidenPriors(ctx context.Context) (float64, error) {
	if err := p.Check(); err != nil {
		return 1, err
	}
	if p.Priors != nil {
		return 1, nil
	}
	times, err := p.widening(ctx)
	p.Priors = p.priors()
	for i := range p.Priors {
		p.Priors[i].SD *= times
	}
	return times, err
}

func (p *GaugeFit) widening(ctx context.Context) (float64, error) {
	us := p.unknowns()
	if len(us) == 0 || p.readings() > mostByHand {
		return 1, nil // the former is refused by the fit; the latter leave little to priors
	}
	wide := newGaugeModel(ctx, p, widened(us, widenings[len(widenings)-1]))
	start, err := wide.start()
	if err != nil {
		return 1, err
	}
	if _, err := wide.snoop(ctx, start); err != nil {
		if ctx.Err() != nil {
			return 1, err
		}
		return 1, nil // such a car cannot be followed that far
	}
	best, least := 1.0, math.Inf(1)
	for i, times := range widenings {
		if p.Progress != nil {
			p.Progress(float64(i+1) / float64(len(widenings)+1))
		}
		m := newGaugeModel(ctx, p, widened(us, times))
		m.used = wide.used
		e, err := m.solve(ctx, start, nil)
		if err != nil {
			if ctx.Err() != nil {
				return 1, err
			}
			continue
		}
		surprise := m.surprise(&e)
		if times == 1 {
			surprise -= leastEvidence
		}
		if surprise < least {
			best, least = times, surprise
		}
	}
	return best, nil
}

// widened returns unknowns with the standard deviations of the car made larger.
func widened(us []Unknown, times float64) []Unknown {
	out := slices.Clone(us)
	for k := range out {
		if out[k].Kind == CarUnknown {
			out[k].SD *= times
		}
	}
	return out
}

// surprise returns twice the negative logarithm of how likely the readings in use were
// before the car was known, but for what does not depend on the priors.
func (m *gaugeModel) surprise(e *nlp.Estimate) float64 {
	n := len(m.unknowns)
	sum := e.ChiSquare
	a := make([]float64, n*n)
	for i := range n {
		for j := range n {
			a[i*n+j] = e.Covariance.At(i, j) / (m.unknowns[i].SD * m.unknowns[j].SD)
		}
	}
	if !nlp.Cholesky(a, n) {
		return math.Inf(1)
	}
	for k := range n {
		sum -= 2 * math.Log(a[k*n+k])
	}
	return sum
}
