package optimize

import (
	"testing"

	"toewright/solver"
)

func TestLastOf(t *testing.T) {
	const left, right = solver.Left, solver.Right
	tests := []struct {
		name  string
		sides []solver.Side
		side  solver.Side
		want  int
	}{
		{"one", []solver.Side{left}, left, 0},
		{"the last", []solver.Side{left, right, left}, left, 2},
		{"not the last", []solver.Side{left, left, right}, left, 1},
		{"the first", []solver.Side{left, right, right}, left, 0},
		{"none of the side", []solver.Side{left, left}, right, 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			f := &FittedCar{}
			for _, s := range tt.sides {
				f.Sets = append(f.Sets, ReadingSet{Side: s})
			}
			if got := f.lastOf(tt.side); got != &f.Sets[tt.want] {
				t.Errorf("lastOf = %+v, want set %d", got, tt.want)
			}
		})
	}
}
