package optimize

import (
	"math"
	"slices"

	"toewright/optimize/nlp"
)

// Grid is what the shop can make of one parameter, in mm or radians. The zero value
// leaves the parameter as it is.
type Grid struct {
	Step float64 // multiples of it: 0.1 mm, 1/64 in
	// Sizes, where there are any, are the only values: drills, tapers, spacers at
	// hand. Step does not count then.
	Sizes []float64
}

// gridSlack is the share of a step by which a bound may miss a grid point.
const gridSlack = 1e-9

// gridAxis is the grid of a free parameter within its bounds.
type gridAxis struct {
	min, max float64
	step     float64   // 0 for none
	sizes    []float64 // ascending, within the bounds; nil for none
}

// newGridAxis returns an error where no grid value lies within the bounds.
func newGridAxis(f *Free, g *Grid) (gridAxis, error) {
	a := gridAxis{min: f.Min, max: f.Max}
	switch {
	case len(g.Sizes) > 0:
		for _, v := range g.Sizes {
			if v >= f.Min && v <= f.Max {
				a.sizes = append(a.sizes, v)
			}
		}
		slices.Sort(a.sizes)
		if len(a.sizes) == 0 {
			return a, nlp.ProblemErrorf("none of the %d sizes of %s lies within its bounds", len(g.Sizes), f.Key())
		}
	case g.Step > 0:
		a.step = g.Step
		a.min, a.max = math.Ceil(f.Min/g.Step-gridSlack)*g.Step, math.Floor(f.Max/g.Step+gridSlack)*g.Step
		if a.min > a.max {
			return a, nlp.ProblemErrorf("no step of the grid of %s lies within its bounds", f.Key())
		}
	}
	return a, nil
}

// nearest returns the grid value next to v.
func (a *gridAxis) nearest(v float64) float64 {
	switch {
	case a.sizes != nil:
		return a.sizes[a.place(v)]
	case a.step > 0:
		v = math.Round(v/a.step) * a.step
	}
	return math.Max(a.min, math.Min(a.max, v))
}

// next returns the grid value before or after the grid value v, way being -1 or 1;
// v itself where there is none.
func (a *gridAxis) next(v float64, way int) float64 {
	switch {
	case a.sizes != nil:
		return a.sizes[max(0, min(len(a.sizes)-1, a.place(v)+way))]
	case a.step > 0:
		k := math.Round(v/a.step) + float64(way)
		return math.Max(a.min, math.Min(a.max, k*a.step))
	}
	return v
}

// place returns the index of the size next to v.
func (a *gridAxis) place(v float64) int {
	i, _ := slices.BinarySearch(a.sizes, v)
	if i == len(a.sizes) || i > 0 && v-a.sizes[i-1] < a.sizes[i]-v {
		i--
	}
	return i
}

// gridded reports whether the parameter may not have any value within its bounds.
func (a *gridAxis) gridded() bool { return a.sizes != nil || a.step > 0 }

// count returns the number of grid values.
func (a *gridAxis) count() int {
	if a.sizes != nil {
		return len(a.sizes)
	}
	return int(math.Round((a.max-a.min)/a.step)) + 1
}

// value returns grid value number i, ascending.
func (a *gridAxis) value(i int) float64 {
	if a.sizes != nil {
		return a.sizes[i]
	}
	return math.Max(a.min, math.Min(a.max, (math.Round(a.min/a.step)+float64(i))*a.step))
}

// coarsened returns the grid with steps so many times as long, within the bounds of
// this one; sizes stay.
func (a gridAxis) coarsened(times float64) gridAxis {
	if a.step > 0 && a.sizes == nil {
		step := times * a.step
		low, high := math.Ceil(a.min/step-gridSlack)*step, math.Floor(a.max/step+gridSlack)*step
		if low <= high {
			a.step, a.min, a.max = step, low, high
		}
	}
	return a
}
