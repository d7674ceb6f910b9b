package optimize

import (
	"slices"

	"gonum.org/v1/gonum/mat"
)

// differences are the derivatives of a vector that has none of its own by free parameters, by
// central differences. They only steer a search: what holds is judged by values.
type differences struct {
	free     []Free
	of       func(x, out []float64) bool
	at       []float64
	up, down []float64
}

func newDifferences(free []Free, of func(x, out []float64) bool) *differences {
	return &differences{free: free, of: of, at: make([]float64, len(free))}
}

// write sets a row of j for each element of the vector. It returns false where the
// vector has no value beside x.
func (d *differences) write(x []float64, j *mat.Dense) bool {
	rows, _ := j.Dims()
	d.up, d.down = slices.Grow(d.up[:0], rows)[:rows], slices.Grow(d.down[:0], rows)[:rows]
	copy(d.at, x)
	for k := range d.free {
		f := &d.free[k]
		h := limitStep * (f.Max - f.Min)
		d.at[k] = x[k] + h
		ok := d.of(d.at, d.up)
		d.at[k] = x[k] - h
		ok = ok && d.of(d.at, d.down)
		d.at[k] = x[k]
		if !ok {
			return false
		}
		for i := range d.up {
			j.Set(i, k, (d.up[i]-d.down[i])/(2*h))
		}
	}
	return true
}
