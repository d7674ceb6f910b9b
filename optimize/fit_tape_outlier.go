package optimize

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"

	"toewright/optimize/nlp"
)

// TapeOutlier is a measure of the tape that was left out: it disagrees with all others by
// more than chance allows.
type TapeOutlier struct {
	Measure int // among the tape's, from 0
	// Expected is what the others say it should be, mm, and Score by how much it is more,
	// in units of the standard deviation of the difference.
	Expected, Score float64
	// Or are measures that may be wrong in its place: with one of them left out all
	// others, this one among them, agree about as well. The likeliest first.
	Or []TapeOutlier
}

// leastOdds is how likely, against the measure left out, another that may be wrong in its
// place must be to be named.
const leastOdds = 0.01

// tapeOutliers describes the measures left out of a fit, and widens its covariance by how
// far the car would stand elsewhere were another one wrong.
func (m *gaugeModel) tapeOutliers(e *nlp.Estimate, covariance *mat.SymDense) []TapeOutlier {
	var out []TapeOutlier
	for _, o := range m.leftOut(e) {
		if m.taped(o.row) {
			one := TapeOutlier{Measure: m.tape.which[o.row-m.tape.first], Score: o.score}
			one.Expected, _ = m.tape.predicted(o.row-m.tape.first, e.X)
			one.Or = m.instead(e, o.row, covariance)
			out = append(out, one)
		}
	}
	return out
}

// instead returns the measures that may be wrong in place of the one of a row that was
// left out. By the linearised model, taking that one back and leaving out another changes
// the chi-square by the square of the first one's score less that of the other's, and
// moves the unknowns by what the two steps do; the covariance gains the spread of the
// places so found, each as likely as it is.
func (m *gaugeModel) instead(e *nlp.Estimate, row int, covariance *mat.SymDense) (out []TapeOutlier) {
	v := nlp.NewValues(m.size)
	if m.evaluate(e.X, &v) != nil {
		return nil
	}
	back := v.JR.RawRowView(row)
	gain := nlp.SymMulVec(make([]float64, len(back)), e.Covariance, back)
	spread := 1 + floats.Dot(back, gain)
	score := v.R[row] * v.R[row] / spread
	total := 1.0
	var shifts [][]float64
	for i := range m.tape.measures {
		other := m.tape.first + i
		if !m.used[other] {
			continue
		}
		rate := v.JR.RawRowView(other)
		shared := floats.Dot(rate, gain)
		off := v.R[other] - shared*v.R[row]/spread
		free := 1 - nlp.Inner(e.Covariance, rate) + shared*shared/spread
		if !(free > leastFreedom) {
			continue
		}
		odds := math.Exp((off*off/free - score) / 2)
		if !(odds > leastOdds) {
			continue
		}
		odds = math.Min(odds, 1)
		total += odds
		// What the unknowns move by: taken back, then the other left out.
		move := floats.ScaleTo(make([]float64, len(gain)), -v.R[row]/spread, gain)
		floats.AddScaled(move, off/free, nlp.SymMulVec(make([]float64, len(rate)), e.Covariance, rate))
		floats.AddScaled(move, -off/free*shared/spread, gain)
		shifts = append(shifts, floats.ScaleTo(move, math.Sqrt(odds), move))
		one := TapeOutlier{Measure: m.tape.which[i], Score: -off / math.Sqrt(free)}
		one.Expected = m.tape.measures[i].Value + off/free*m.tape.measures[i].SD
		out = append(out, one)
	}
	for _, move := range shifts {
		covariance.SymRankOne(covariance, 1/total, mat.NewVecDense(len(move), move))
	}
	return out
}
