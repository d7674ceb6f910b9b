package nlp

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"toewright/tools/validation"
)

// TestValidationFits holds the part of docs/validation.md on least squares: certified
// fits from every published start. The published standard deviations are scaled by
// the residuals' own: √(sum / freedom).
func TestValidationFits(t *testing.T) {
	var all []validation.Reference
	for i := range references {
		r := &references[i]
		all = append(all, validation.Reference{Name: "Least squares: " + r.name, Source: r.source, Claims: r.claims})
	}
	all[0].Claims = thermometerClaims
	validation.Hold(t, "../"+validation.Page, "fits", all)
}

// claims returns the parameters, their standard deviations and the residual sum of
// squares from each start.
func (r *reference) claims(t *testing.T) []validation.Claim {
	var cs []validation.Claim
	for i, start := range r.starts {
		from := ""
		if len(r.starts) > 1 {
			from = fmt.Sprintf(", start %d", i+1)
		}
		add := func(figure string, want, got float64) {
			cs = append(cs, validation.Claim{Figure: figure + from, Unit: "", Want: want, Got: got, Limit: r.tol * math.Abs(want)})
		}
		e := fit(t, Readings{Model: r.model(), Start: start})
		if e.Status != Converged {
			t.Fatalf("Status = %v after %d iterations from start %d, want converged", e.Status, e.Iterations, i+1)
		}
		for j, want := range r.x {
			add(fmt.Sprintf("parameter %d", j+1), want, e.X[j])
			add("its standard deviation", r.sd[j], math.Sqrt(e.Covariance.At(j, j)*e.ChiSquare/float64(e.Freedom)))
		}
		add("residual sum of squares", r.sum, e.ChiSquare)
	}
	return cs
}

// thermometerClaims adds the correlation and the correction predicted at 30 °C.
func thermometerClaims(t *testing.T) []validation.Claim {
	r := &references[0]
	e := fit(t, Readings{Model: r.model(), Start: r.starts[0]})
	cov, at30 := e.Covariance, mat.NewVecDense(2, []float64{1, 10})
	own := e.ChiSquare / float64(e.Freedom)
	return append(r.claims(t),
		validation.Claim{Figure: "correlation of the two", Want: -0.930430, Got: cov.At(0, 1) / math.Sqrt(cov.At(0, 0)*cov.At(1, 1)), Limit: 1e-6},
		validation.Claim{Figure: "correction at 30 °C", Unit: "°C", Want: -0.149376813, Got: mat.Dot(at30, mat.NewVecDense(2, e.X)), Limit: 1e-9},
		validation.Claim{Figure: "its standard uncertainty", Unit: "°C", Want: 0.004138596, Got: math.Sqrt(mat.Inner(at30, cov, at30) * own), Limit: 1e-9},
		validation.Claim{Figure: "degrees of freedom", Want: 9, Got: float64(e.Freedom), Limit: 0.1},
	)
}
