package optimize

import (
	"context"
	"slices"

	"gonum.org/v1/gonum/mat"

	"toewright/optimize/nlp"
)

// partModel is a model of some of another one's variables; the others stay.
type partModel struct {
	whole nlp.Model
	of    []int     // places of the variables in the whole
	x     []float64 // of the whole
	jr    *mat.Dense
	jg    *mat.Dense
}

// newPartModel returns a model of the variables at the places.
func newPartModel(whole nlp.Model, of []int) *partModel {
	all := nlp.NewValues(whole.Size())
	return &partModel{whole: whole, of: of, x: make([]float64, whole.Size().Variables), jr: all.JR, jg: all.JG}
}

// Size implements [Model].
func (m *partModel) Size() nlp.Size {
	size := m.whole.Size()
	size.Variables = len(m.of)
	return size
}

// Evaluate implements [Model].
func (m *partModel) Evaluate(x []float64, v *nlp.Values) bool {
	for i, k := range m.of {
		m.x[k] = x[i]
	}
	all := nlp.Values{R: v.R, G: v.G}
	if v.JR != nil {
		all.JR = m.jr
	}
	if v.JG != nil {
		all.JG = m.jg
	}
	if !m.whole.Evaluate(m.x, &all) {
		return false
	}
	m.columns(v.JR, all.JR)
	m.columns(v.JG, all.JG)
	return true
}

// columns copies the columns of the variables.
func (m *partModel) columns(dst, src *mat.Dense) {
	if dst == nil {
		return
	}
	for i, k := range m.of {
		for row := range dst.RawMatrix().Rows {
			dst.Set(row, i, src.At(row, k))
		}
	}
}

// refit fits the parameters that may have any value anew where the others stand on
// their grids.
type refit struct {
	part  *partModel
	local *nlp.LocalSearch
	spent int // evaluations of the last fit
}

// newRefit returns what fits the parameters at some places anew; nil where there are
// none. Where the context ends it leaves them where they are by then.
func newRefit(ctx context.Context, p *ToeSearch, m *toeModel, of []int) (*refit, error) {
	if len(of) == 0 {
		return nil, nil
	}
	part, all := newPartModel(m, of), p.variables()
	q := nlp.Problem{Model: part, Objective: p.Objective(len(m.wheels))}
	for _, i := range of {
		q.Variables = append(q.Variables, all[i])
	}
	local, err := nlp.NewLocalSearch(ctx, q, nil)
	if err != nil {
		return nil, err
	}
	return &refit{part: part, local: local}, nil
}

// at returns x with the parameters that may have any value at the best that is near. It
// returns x itself where there is none such, or nothing to begin from.
func (r *refit) at(x []float64) []float64 {
	if r == nil {
		return x
	}
	if y, _, ok := r.run(x); ok {
		return y
	}
	return x
}

// run is at, with how the search ended; false where there is nothing to begin from.
func (r *refit) run(x []float64) (y []float64, o nlp.Optimum, ok bool) {
	copy(r.part.x, x)
	start := make([]float64, len(r.part.of))
	for i, k := range r.part.of {
		start[i] = x[k]
	}
	o, r.spent, ok = r.local.From(start)
	if !ok {
		return nil, o, false
	}
	y = slices.Clone(x)
	for i, k := range r.part.of {
		y[k] = o.X[i]
	}
	return y, o, true
}
