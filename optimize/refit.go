package optimize

import (
	"context"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// partModel is a model of some of another one's variables; the others stay.
type partModel struct {
	whole Model
	of    []int     // places of the variables in the whole
	x     []float64 // of the whole
	jr    *mat.Dense
	jg    *mat.Dense
}

// newPartModel returns a model of the variables at the places.
func newPartModel(whole Model, of []int) *partModel {
	all := newValues(whole.Size())
	return &partModel{whole: whole, of: of, x: make([]float64, whole.Size().Variables), jr: all.JR, jg: all.JG}
}

// Size implements [Model].
func (m *partModel) Size() Size {
	size := m.whole.Size()
	size.Variables = len(m.of)
	return size
}

// Evaluate implements [Model].
func (m *partModel) Evaluate(x []float64, v *Values) bool {
	for i, k := range m.of {
		m.x[k] = x[i]
	}
	all := Values{R: v.R, G: v.G}
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
	part      *partModel
	variables []Variable
	polisher  *polisher
}

// newRefit returns what fits the parameters at some places anew; nil where there are
// none.
func newRefit(p *ToeSearch, m *toeModel, of []int) (*refit, error) {
	if len(of) == 0 {
		return nil, nil
	}
	var variables []Variable
	for _, i := range of {
		f := &p.Free[i]
		variables = append(variables, Variable{Name: f.Key(), Min: f.Min, Max: f.Max})
	}
	o := p.Objective(len(m.wheels))
	scale, err := newScale(&o, m.Size().Residuals)
	if err != nil {
		return nil, err
	}
	part := newPartModel(m, of)
	s := (*Settings)(nil).withDefaults(len(of))
	box := &unitBox{ctx: context.Background(), model: part, variables: variables, x: make([]float64, len(of)), budget: s.Evaluations}
	return &refit{part, variables, newPolisher(box, scale, s.Iterations, func() {})}, nil
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
func (r *refit) run(x []float64) ([]float64, local, bool) {
	copy(r.part.x, x)
	u := make([]float64, len(r.variables))
	for i, k := range r.part.of {
		u[i] = r.variables[i].toUnit(x[k])
	}
	r.polisher.box.count = 0
	l, ok := r.polisher.run(u)
	if !ok {
		return nil, l, false
	}
	y := slices.Clone(x)
	for i, k := range r.part.of {
		y[k] = r.variables[i].fromUnit(l.u[i])
	}
	return y, l, true
}
