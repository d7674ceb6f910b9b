package optimize

import "toewright/optimize/nlp"

// TapeOutlier is a measure of the tape that was left out: it disagrees with all others by
// more than chance allows.
type TapeOutlier struct {
	Measure int // among the tape's, from 0
	// Expected is what the others say it should be, mm, and Score by how much it is more,
	// in units of the standard deviation of the difference.
	Expected, Score float64
}

// tapeOutliers describes the measures left out of a fit.
func (m *gaugeModel) tapeOutliers(e *nlp.Estimate) []TapeOutlier {
	var out []TapeOutlier
	for _, o := range m.leftOut(e) {
		if m.taped(o.row) {
			i := o.row - m.tape.first
			expected, _ := m.tape.predicted(i, e.X)
			out = append(out, TapeOutlier{Measure: m.tape.which[i], Expected: expected, Score: o.score})
		}
	}
	return out
}
