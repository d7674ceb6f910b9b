package optimize

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"

	"toewright/optimize/nlp"
)

// innovation is what readings say beyond a fitted car: their differences from
// what it predicts, and the spread that these should have, in units of each
// reading's own standard deviation.
type innovation struct {
	model *gaugeModel
	off   []float64  // readings less prediction, the zeros at 0
	rates *mat.Dense // of the prediction, by unknown
	// weight is the inverse of the spread with the sets' zeros left free: a
	// difference that all readings of a set share weighs nothing.
	weight *mat.SymDense
	spread *mat.SymDense // with the zeros known
}

// innovation compares sets of readings with the fitted car.
func (f *FittedCar) innovation(sets []ReadingSet) (*innovation, error) {
	v := &innovation{model: newGaugeModel(&GaugeFit{Base: f.Base, Sets: sets}, f.Unknowns)}
	values, err := v.model.values(f.Values)
	if err != nil {
		return nil, err
	}
	rows := v.model.size.Residuals
	v.off = floats.ScaleTo(make([]float64, rows), -1, values.R)
	v.rates = values.JR
	v.spread = nlp.Congruence(v.rates, f.Covariance)
	for i := range rows {
		v.spread.SetSym(i, i, v.spread.At(i, i)+1)
	}
	return v, v.weigh()
}

// values evaluates the model with all unknown zeros at 0.
func (m *gaugeModel) values(unknowns []float64) (*nlp.Values, error) {
	v := nlp.NewValues(m.size)
	return &v, m.predict(unknowns, &v)
}

// weigh inverts the spread, and takes out of the inverse what the unknown zeros account
// for.
func (v *innovation) weigh() error {
	rows := len(v.off)
	weight, ok := nlp.Inverse(v.spread)
	if !ok {
		return nlp.ProblemErrorf("the spread of %d readings has no inverse", rows)
	}
	v.weight = weight
	for i := range v.model.sets {
		if v.model.sets[i].Zero != nil {
			continue
		}
		// The zeros' columns have no reading in common, but the spread joins
		// them: each is taken out of what the ones before have left.
		z := make([]float64, rows)
		first, end := v.model.span(i)
		for k := first; k < end; k++ {
			z[k] = 1
		}
		w := nlp.SymMulVec(make([]float64, rows), v.weight, z)
		nlp.AddOuter(v.weight, -1/floats.Dot(z, w), w, w)
	}
	return nil
}

// chiSquare returns that of a difference from the prediction.
func (v *innovation) chiSquare(off []float64) float64 { return nlp.Inner(v.weight, off) }

// freedom returns the number of readings less the unknown zeros.
func (v *innovation) freedom() int { return v.model.freedom() }

// settle returns the differences with each set's zero at its most likely value,
// and their standard deviations, both in units of a reading's own.
func (v *innovation) settle() (off, sd []float64) {
	rows := len(v.off)
	off, sd = make([]float64, rows), make([]float64, rows)
	pull := nlp.SymMulVec(make([]float64, rows), v.weight, v.off)
	nlp.SymMulVec(off, v.spread, pull) // V·W·off: off less what the zeros take
	row := make([]float64, rows)
	for i := range sd {
		for j := range row {
			row[j] = v.spread.At(i, j)
		}
		sd[i] = math.Sqrt(nlp.Inner(v.weight, row)) // V·W·V is the spread of that
	}
	return off, sd
}
