package optimize

import (
	"cmp"
	"context"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"
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
// that is robust against several at once says which to suspect first. Then the
// reading with the largest residual in units of its own standard deviation is
// left out while that is beyond chance (data snooping; Baarda 1968, from memory),
// and those that agree with the rest in the end are taken back.
func (m *gaugeModel) snoop(ctx context.Context, start []float64) (Estimate, []Outlier, error) {
	e, err := m.solve(ctx, start, nil)
	if err != nil || !m.spare(&e) {
		return e, nil, err
	}
	if err := m.suspect(ctx, start); err != nil {
		return e, nil, err
	}
	for {
		if e, err = m.solve(ctx, start, nil); err != nil {
			return e, nil, err
		}
		if !m.spare(&e) {
			break
		}
	}
	if m.readmit(&e) {
		if e, err = m.solve(ctx, start, nil); err != nil {
			return e, nil, err
		}
	}
	return e, m.outliers(&e), nil
}

// suspect leaves out the readings that a robust fit to all of them does not
// follow, the worst first.
func (m *gaugeModel) suspect(ctx context.Context, start []float64) error {
	m.useAll()
	e, err := m.solve(ctx, start, StudentT{})
	if err != nil {
		return err
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
	return nil
}

func (m *gaugeModel) useAll() {
	for i := range m.used {
		m.used[i] = true
	}
}

// spare leaves out the reading that disagrees most with the rest, if any does. It
// reports whether it did.
func (m *gaugeModel) spare(e *Estimate) bool {
	worst, largest := -1, critical(len(m.used))
	for i, r := range e.Residuals {
		score := math.Abs(r) / math.Sqrt(math.Max(1-e.Leverage[i]-m.zeroShare(m.setOf(i)), leastFreedom))
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
// follows, 0 where that is known.
func (m *gaugeModel) zeroShare(set int) float64 {
	if m.sets[set].Zero != nil {
		return 0
	}
	first, end := m.span(set)
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

// setOf returns the set of a row.
func (m *gaugeModel) setOf(row int) int {
	set, found := slices.BinarySearch(m.firsts, row)
	if !found {
		set--
	}
	return set
}

// readmit takes back the readings left out that the fit without them predicts. It
// reports whether there were any.
func (m *gaugeModel) readmit(e *Estimate) bool {
	any := false
	for _, o := range m.outliers(e) {
		if math.Abs(o.Score) <= critical(len(m.used)) {
			first, _ := m.span(o.Set)
			m.used[first+o.Reading] = true
			any = true
		}
	}
	return any
}

// outliers describes the readings left out of a fit.
func (m *gaugeModel) outliers(e *Estimate) []Outlier {
	v := newValues(m.size)
	if m.evaluate(e.X, &v) != nil {
		return nil
	}
	var out []Outlier
	for row, used := range m.used {
		if used {
			continue
		}
		set := m.setOf(row)
		first, _ := m.span(set)
		s, rates := &m.sets[set], v.JR.RawRowView(row)
		r := s.Readings[row-first]
		out = append(out, Outlier{
			Set: set, Reading: row - first, Travel: r.Travel, Value: r.Value,
			Off:   -v.R[row] * s.Repeatability,
			Score: -v.R[row] / math.Sqrt(1+m.zeroShare(set)+inner(e.Covariance, rates)),
		})
	}
	return out
}
