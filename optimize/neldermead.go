package optimize

import (
	"context"
	"math"
	"slices"
)

// simplex searches the minimum of a function of n variables without derivatives, by the
// method of Nelder and Mead (1965) with the usual factors: n+1 points of which the worst
// is moved through the middle of the others, or all towards the best.
type simplex struct {
	value   func([]float64) float64
	corners []corner // ascending
	middle  []float64
	left    int // evaluations that are left
}

// corner is a point and the function's value there; NaN counts as infinite.
type corner struct {
	x     []float64
	value float64
}

// newSimplex starts from a point with edges of the given length along each axis, and
// spends at most that many evaluations.
func newSimplex(value func([]float64) float64, start []float64, edge float64, evaluations int) *simplex {
	s := &simplex{value: value, middle: make([]float64, len(start)), left: evaluations}
	s.add(slices.Clone(start))
	for j := range start {
		x := slices.Clone(start)
		x[j] += edge
		s.add(x)
	}
	return s
}

// best returns the lowest corner.
func (s *simplex) best() corner { return s.corners[0] }

// at evaluates the function.
func (s *simplex) at(x []float64) corner {
	s.left--
	v := s.value(x)
	if math.IsNaN(v) {
		v = math.Inf(1)
	}
	return corner{x, v}
}

func (s *simplex) add(x []float64) { s.insert(s.at(x)) }

// insert puts a corner behind all that are as low.
func (s *simplex) insert(c corner) {
	k := len(s.corners)
	for k > 0 && c.value < s.corners[k-1].value {
		k--
	}
	s.corners = slices.Insert(s.corners, k, c)
}

// simplexPatience is the number of steps after which a simplex that gains nothing stops.
const simplexPatience = 20

// run makes steps until the evaluations are spent, the context ends, or a number of
// steps in a row have gained less than a share of the value.
func (s *simplex) run(ctx context.Context, share float64) {
	from, idle := s.best().value, 0
	for s.left > 0 && idle < simplexPatience && ctx.Err() == nil {
		s.step()
		idle++
		if now := s.best().value; from-now > share*math.Abs(now) {
			from, idle = now, 0
		}
	}
}

// step moves the worst corner, or where that gains nothing shrinks the simplex.
func (s *simplex) step() {
	worst := s.corners[len(s.corners)-1]
	s.corners = s.corners[:len(s.corners)-1]
	s.centre()
	if c, ok := s.moved(worst); ok {
		s.insert(c)
		return
	}
	s.insert(worst)
	s.shrink()
}

// centre sets the middle of the corners that are there.
func (s *simplex) centre() {
	clear(s.middle)
	for _, c := range s.corners {
		for j, x := range c.x {
			s.middle[j] += x / float64(len(s.corners))
		}
	}
}

// moved returns a better place for the worst corner, which has been taken out.
func (s *simplex) moved(worst corner) (corner, bool) {
	through := s.at(s.along(worst, -1))
	switch last := s.corners[len(s.corners)-1].value; {
	case through.value < s.corners[0].value:
		if far := s.at(s.along(worst, -2)); far.value < through.value {
			return far, true
		}
		return through, true
	case through.value < last:
		return through, true
	case through.value < worst.value:
		c := s.at(s.along(worst, -0.5))
		return c, c.value <= through.value
	}
	c := s.at(s.along(worst, 0.5))
	return c, c.value < worst.value
}

// along returns the point that divides the way from the middle (0) to a corner (1).
func (s *simplex) along(c corner, part float64) []float64 {
	x := slices.Clone(s.middle)
	for j := range x {
		x[j] += part * (c.x[j] - x[j])
	}
	return x
}

// shrink halves the way of all corners to the best.
func (s *simplex) shrink() {
	old := s.corners
	s.corners = []corner{old[0]}
	copy(s.middle, old[0].x)
	for _, c := range old[1:] {
		s.add(s.along(c, 0.5))
	}
}
