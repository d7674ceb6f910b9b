package plot

import (
	"cmp"
	"slices"
)

// Undominated returns the indices of the points for which no other is at least as
// low in both values and lower in one, in order of x: the choices worth a look where
// both, as toe error and price, are better when less. Of points that are alike the
// first is taken; those with gaps are left out.
func Undominated(xs, ys []float64) []int {
	var order []int
	for i := range min(len(xs), len(ys)) {
		if finite(xs[i]) && finite(ys[i]) {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(xs[a], xs[b]), cmp.Compare(ys[a], ys[b]))
	})
	var front []int
	for _, i := range order {
		if len(front) == 0 || ys[i] < ys[front[len(front)-1]] {
			front = append(front, i)
		}
	}
	return front
}

// AppendStaircase appends the edge of what the undominated points leave out of
// reach: from the top of the frame down to the first, by right angles from each to
// the next, and from the last to the far end.
func (f Frame) AppendStaircase(dst Path, xs, ys []float64, front []int) Path {
	if len(front) == 0 {
		return dst
	}
	p := pen{path: dst, area: f.Area}
	at := Point{f.X.At(xs[front[0]]), f.Y.To}
	p.to(at)
	for _, i := range front {
		next := f.At(xs[i], ys[i])
		p.to(Point{next.X, at.Y})
		p.to(next)
		at = next
	}
	p.to(Point{f.X.To, at.Y})
	return p.path
}
