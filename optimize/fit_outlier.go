package optimize

import (
	"cmp"
	"context"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"toewright/optimize/nlp"
)

// Outlier is a reading that was left out of a fit: it disagrees with all others
// by more than chance allows.
type Outlier struct {
	Set, Reading  int // counted from 0
	Travel, Value float64
	// Off is the reading less what the fit without it predicts, mm; Score is
	// that in units of its standard deviation.
	Off, Score float64
}

const (
	// outlierLevel is the chance that any reading of a sound set is left out: the
	// level of a single one is this, shared among all (Bonferroni).
	outlierLevel = 0.01
	// outlierShare is the largest share of the readings that may be left out.
	// Where more disagree it is the model that is wrong, or the travel.
	outlierShare = 0.2
)

// critical returns the score beyond which one of n readings is an outlier.
func critical(n int) float64 {
	return distuv.UnitNormal.Quantile(1 - outlierLevel/(2*float64(n)))
}

// snoop fits the readings without their outliers. Where one stands out, a fit
// that is robust against several at once says which to suspect first, and those
// that are beyond chance are left out; see [gaugeModel.settle]. What a tape measured
// is looked at point by point after that.
func (m *gaugeModel) snoop(ctx context.Context, start []float64) (nlp.Estimate, error) {
	e, err := m.solve(ctx, start, nil)
	if err != nil || !m.spare(&e) {
		return e, err
	}
	if start, err = m.suspect(ctx, start); err != nil {
		return e, err
	}
	if e, err = m.settle(ctx, start); err != nil || len(m.tape.measures) == 0 {
		return e, err
	}
	return m.reconsider(ctx, e)
}

// settle leaves out the reading with the largest residual in units of its own standard
// deviation while that is beyond chance (data snooping; Baarda 1968, from memory). Then
// it takes back those that agree with the rest, the closest first, each once: two that
// are out may agree only because both are.
func (m *gaugeModel) settle(ctx context.Context, start []float64) (nlp.Estimate, error) {
	back := make([]bool, len(m.used))
	for {
		e, err := m.solve(ctx, start, nil)
		if err != nil {
			return e, err
		}
		if !m.spare(&e) && !m.readmit(&e, back) {
			return e, nil
		}
	}
}

// suspect leaves out the readings that a robust fit to all of them does not
// follow, the worst first. It returns where to begin without them: where that fit has
// what was taped, else as before.
func (m *gaugeModel) suspect(ctx context.Context, start []float64) ([]float64, error) {
	m.useAll()
	if len(m.tape.measures) > 0 {
		// A template is far from what was taped: before gross errors count for less
		// and less, each must first be kept from pulling the more the larger it is.
		e, err := m.solve(ctx, start, nlp.Huber{})
		if err != nil {
			return nil, err
		}
		start = e.X
	}
	e, err := m.solve(ctx, start, nlp.StudentT{})
	if err != nil {
		return nil, err
	}
	if len(m.tape.measures) > 0 {
		start = e.X
	}
	order := make([]int, len(e.Residuals))
	for i := range order {
		order[i] = i
	}
	size := func(i int) float64 { return math.Abs(e.Residuals[i]) }
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(size(b), size(a)) })
	for _, row := range order {
		if size(row) > critical(len(m.used)) && m.sparable(row) {
			m.used[row] = false
		}
	}
	return start, nil
}

func (m *gaugeModel) useAll() {
	for i := range m.used {
		m.used[i] = true
	}
}

// spare leaves out the reading that disagrees most with the rest, if any does. It
// reports whether it did.
func (m *gaugeModel) spare(e *nlp.Estimate) bool {
	worst, largest := -1, critical(len(m.used))
	for i, r := range e.Residuals {
		score := math.Abs(r) / math.Sqrt(math.Max(1-e.Leverage[i]-m.zeroShare(i), leastFreedom))
		if m.used[i] && score > largest && m.sparable(i) {
			worst, largest = i, score
		}
	}
	if worst < 0 {
		return false
	}
	m.used[worst] = false
	return true
}

// zeroShare returns the share of the error of one reading in use that the zero of its set
// follows, 0 where that is known and for what was taped.
func (m *gaugeModel) zeroShare(row int) float64 {
	if m.taped(row) || m.sets[m.setOf(row)].Zero != nil {
		return 0
	}
	first, end := m.span(m.setOf(row))
	n := 0
	for _, used := range m.used[first:end] {
		if used {
			n++
		}
	}
	return 1 / float64(n)
}

// leastFreedom is the least share of its own error that a residual must show to
// be judged by: below it the residual is rounding.
const leastFreedom = 1e-6

// sparable reports whether a reading may be left out: few have been, and its set
// keeps two others.
func (m *gaugeModel) sparable(row int) bool {
	out := 0
	for _, used := range m.used {
		if !used {
			out++
		}
	}
	if float64(out+1) > outlierShare*float64(len(m.used)) {
		return false
	}
	if m.taped(row) {
		return true
	}
	first, end := m.span(m.setOf(row))
	kept := 0
	for _, used := range m.used[first:end] {
		if used {
			kept++
		}
	}
	return kept > 2
}

// span returns the rows of a set.
func (m *gaugeModel) span(set int) (first, end int) {
	return m.firsts[set], m.firsts[set] + len(m.sets[set].Readings)
}

// taped reports whether a row is a measure of the tape.
func (m *gaugeModel) taped(row int) bool { return row >= m.tape.first }

// setOf returns the set of a row that is a reading.
func (m *gaugeModel) setOf(row int) int {
	set, found := slices.BinarySearch(m.firsts, row)
	if !found {
		set--
	}
	return set
}

// readmit takes back the reading left out that the fit without it predicts best, if any
// does and it was not taken back before. It reports whether it did.
func (m *gaugeModel) readmit(e *nlp.Estimate, back []bool) bool {
	closest, least := -1, critical(len(m.used))
	for _, o := range m.leftOut(e) {
		if score := math.Abs(o.score); score <= least && !back[o.row] {
			closest, least = o.row, score
		}
	}
	if closest < 0 {
		return false
	}
	m.used[closest], back[closest] = true, true
	return true
}

// leftOut is a row that is not in use: by how much it is off what the fit predicts, in
// units of its own standard deviation and of that of the difference.
type leftOut struct {
	row        int
	off, score float64
}

// leftOut lists the rows left out of a fit.
func (m *gaugeModel) leftOut(e *nlp.Estimate) []leftOut {
	v := nlp.NewValues(m.size)
	if m.evaluate(e.X, &v) != nil {
		return nil
	}
	var out []leftOut
	for row, used := range m.used {
		if !used {
			spread := 1 + m.zeroShare(row) + nlp.Inner(e.Covariance, v.JR.RawRowView(row))
			out = append(out, leftOut{row, -v.R[row], -v.R[row] / math.Sqrt(spread)})
		}
	}
	return out
}

// outliers describes the readings left out of a fit.
func (m *gaugeModel) outliers(e *nlp.Estimate) []Outlier {
	var out []Outlier
	for _, o := range m.leftOut(e) {
		if m.taped(o.row) {
			continue
		}
		set := m.setOf(o.row)
		first, _ := m.span(set)
		s := &m.sets[set]
		r := s.Readings[o.row-first]
		out = append(out, Outlier{
			Set: set, Reading: o.row - first, Travel: r.Travel, Value: r.Value,
			Off: o.off * s.Repeatability, Score: o.score,
		})
	}
	return out
}
