package optimize

import (
	"context"
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"

	"toewright/optimize/nlp"
)

// innovation is what readings say beyond a fitted car: their differences from
// what it predicts, and the spread that these should have, in units of each
// reading's own standard deviation. That spread is I + A·Aᵀ, where A has a row for each
// reading and a column for each unknown, brought to unit variances. Its inverse with
// the sets' zeros left free, so that a difference that all readings of a set share
// weighs nothing, is P - B·(I + BᵀB)⁻¹·Bᵀ (Woodbury), where P takes each set's mean
// away and B is P·A: the work grows with the readings, not with their cube.
type innovation struct {
	model  *gaugeModel
	off    []float64   // readings less prediction, the zeros at 0
	rates  *mat.Dense  // of the prediction, by unknown
	centre *mat.Dense  // B
	means  [][]float64 // by set: that of its rows of A, nil where its zero is known
	factor []float64   // Cholesky's of I + BᵀB
}

// innovation compares sets of readings with the fitted car.
func (f *FittedCar) innovation(ctx context.Context, sets []ReadingSet) (*innovation, error) {
	v := &innovation{model: newGaugeModel(ctx, &GaugeFit{Base: f.Base, Sets: sets}, f.Unknowns)}
	values, err := v.model.values(f.Values)
	if err != nil {
		return nil, err
	}
	v.off = floats.ScaleTo(make([]float64, v.model.size.Residuals), -1, values.R)
	v.rates = values.JR
	root, ok := f.root()
	if ok {
		v.centre = new(mat.Dense)
		v.centre.CloneFrom(v.rates)
		for i := range v.off {
			toUnit(v.centre.RawRowView(i), root)
		}
		for i := range sets {
			v.means = append(v.means, v.centred(i, v.centre.RawRowView))
		}
		ok = v.weigh()
	}
	if !ok {
		return nil, nlp.ProblemErrorf("the priors lie too far apart for %d readings to be weighed by them; state standard deviations that parts can have", len(v.off))
	}
	return v, nil
}

// root returns the U of UᵀU = the covariance, row by row; false where that is not
// positive definite.
func (f *FittedCar) root() ([]float64, bool) {
	n := len(f.Unknowns)
	u := make([]float64, n*n)
	for i := range n {
		for j := range n {
			u[i*n+j] = f.Covariance.At(i, j) / (f.Unknowns[i].SD * f.Unknowns[j].SD)
		}
	}
	ok := nlp.Cholesky(u, n)
	for i := range n {
		for j := range n {
			u[i*n+j] *= f.Unknowns[j].SD
		}
	}
	return u, ok
}

// toUnit replaces derivatives by the unknowns by those by independent ones of variance 1.
func toUnit(row, root []float64) {
	n := len(row)
	for k := range n {
		row[k] = floats.Dot(root[k*n+k:(k+1)*n], row[k:])
	}
}

// centred takes their mean out of the rows of a set, and returns it; nil where the set's
// zero is known.
func (v *innovation) centred(set int, row func(i int) []float64) []float64 {
	if v.model.sets[set].Zero != nil {
		return nil
	}
	first, end := v.model.span(set)
	mean := make([]float64, len(row(first)))
	for i := first; i < end; i++ {
		floats.AddScaled(mean, 1/float64(end-first), row(i))
	}
	for i := first; i < end; i++ {
		floats.AddScaled(row(i), -1, mean)
	}
	return mean
}

// weigh factors I + BᵀB.
func (v *innovation) weigh() bool {
	_, n := v.centre.Dims()
	v.factor = make([]float64, n*n)
	for k := range n {
		v.factor[k*n+k] = 1
	}
	for i := range v.off {
		row := v.centre.RawRowView(i)
		for k, x := range row {
			floats.AddScaled(v.factor[k*n+k:(k+1)*n], x, row[k:])
		}
	}
	return nlp.Cholesky(v.factor, n)
}

// share is what is left of differences, one for each reading, once the zeros took theirs,
// and what of that the unknowns can follow.
type share struct{ rest, followed []float64 }

func (v *innovation) share(off []float64) share {
	_, n := v.centre.Dims()
	s := share{append([]float64(nil), off...), make([]float64, n)}
	for i := range v.model.sets {
		v.centred(i, func(k int) []float64 { return s.rest[k : k+1] })
	}
	for i, x := range s.rest {
		floats.AddScaled(s.followed, x, v.centre.RawRowView(i))
	}
	nlp.CholeskyForward(v.factor, n, s.followed)
	return s
}

// times returns the product of two differences, each in units of what the spread allows.
func (s share) times(t share) float64 {
	return floats.Dot(s.rest, t.rest) - floats.Dot(s.followed, t.followed)
}

// chiSquare returns that of a difference from the prediction.
func (v *innovation) chiSquare(off []float64) float64 {
	s := v.share(off)
	return s.times(s)
}

// freedom returns the number of readings less the unknown zeros.
func (v *innovation) freedom() int { return v.model.freedom() }

// settle returns the differences with each set's zero at its most likely value,
// and their standard deviations, both in units of a reading's own.
func (v *innovation) settle() (off, sd []float64) {
	s := v.share(v.off)
	for i, mean := range v.means {
		first, end := v.model.span(i)
		own, zero, followed := 1.0, 0.0, 0.0
		if mean != nil {
			m := append([]float64(nil), mean...)
			nlp.CholeskyForward(v.factor, len(m), m)
			own, zero, followed = 1-1/float64(end-first), floats.Dot(m, s.followed), floats.Dot(m, m)
		}
		for k := first; k < end; k++ {
			off = append(off, s.rest[k]+zero)
			variance := own - followed
			for j, x := range v.centre.RawRowView(k) {
				if mean != nil {
					x += mean[j]
				}
				variance += x * x
			}
			sd = append(sd, math.Sqrt(variance))
		}
	}
	return off, sd
}

// values evaluates the model with all unknown zeros at 0.
func (m *gaugeModel) values(unknowns []float64) (*nlp.Values, error) {
	v := nlp.NewValues(m.size)
	return &v, m.predict(unknowns, &v)
}
