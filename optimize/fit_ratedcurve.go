package optimize

import (
	"gonum.org/v1/gonum/mat"

	"toewright/solver"
)

// ratedCurve is a toe curve with its exact derivatives.
type ratedCurve struct {
	change []float64  // toe change less target, radians, sides one after the other
	rates  *mat.Dense // of change, by unknown and then by further parameters
}

// rated moves the car with the given changes, and returns its curve with the
// derivatives by the unknowns and by further parameters. It returns an error
// where the car cannot be built or does not reach the window.
func (b *bench) rated(changes []solver.Change, us []Unknown, further []solver.Change) (*ratedCurve, error) {
	car, err := b.Base.Assemble(changes, b.Hold)
	if err != nil {
		return nil, err
	}
	by, err := car.Tangents(append(seedsOf(us), further...))
	if err != nil {
		return nil, err
	}
	in := solver.SweepInput{ToeOnly: true, Travels: b.Travels, Sides: selectionOf(b.sides), From: b.From, By: by}
	if err := car.Sweep(b.ws, &in, &b.curves); err != nil {
		return nil, err
	}
	for _, side := range b.sides {
		if r := &b.curves[side].Reach; !r.Whole() {
			return nil, reachProblem(side, r)
		}
	}
	b.compare()
	return b.takeRates(us, by.Len()), nil
}

// takeRates copies the curve moved last. It does not depend on what is no
// parameter of the car, such as the travels' zero.
func (b *bench) takeRates(us []Unknown, seeds int) *ratedCurve {
	columns, width := columnsOf(us, seeds)
	c := &ratedCurve{change: append([]float64(nil), b.change...), rates: mat.NewDense(len(b.change), width, nil)}
	row := 0
	for _, side := range b.sides {
		curve := &b.curves[side]
		for i := range curve.Positions {
			for k, column := range columns {
				c.rates.Set(row, column, curve.ToeRate(i, k)-curve.ToeRate(b.zero, k))
			}
			row++
		}
	}
	return c
}

// columnsOf returns, for each of a number of seeds, the column of what it stands
// for: those of the unknowns of the car first, and after all unknowns the rest.
// width is the number of columns.
func columnsOf(us []Unknown, seeds int) (columns []int, width int) {
	for k := range us {
		if us[k].Kind == CarUnknown {
			columns = append(columns, k)
		}
	}
	width = len(us)
	for len(columns) < seeds {
		columns = append(columns, width)
		width++
	}
	return columns, width
}
