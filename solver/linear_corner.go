package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// rows are the five constraints on a knuckle in one pose, by their wrenches. As
// equations for a small movement they say force·v + moment·ω = b, where v is the
// level velocity of the wheel centre and ω the angular velocity, both in V.
type rows [cornerUnknowns]wrench

// rowPair names two rows, first before second, that between them fix v, and the
// other three.
type rowPair struct {
	first, second int
	others        [3]int
}

// minPair is the least determinant of the level forces of a pair, the sine of
// the angle between its links in plan view for level ones, with which v is
// worth eliminating by it.
const minPair = 0.05

// split is the factored form of rows: the pair gives v for any ω, and what the
// other three rows then ask of ω is a triple of vectors. Against a factorisation
// of five by five it has two divisions and no search for pivots.
type split struct {
	pair  rowPair
	share [3][2]float64 // of the pair in each other row's force
	dual  [3]Vec        // reciprocal to the reduced moments of the others
	inv   [2][2]float64 // of the pair's level forces, by rows
}

// bestPair returns the pair of rows with the largest determinant.
func (w *rows) bestPair() rowPair {
	first, second, size := 0, 1, -1.0
	for i := range w {
		for j := i + 1; j < len(w); j++ {
			if d := math.Abs(plan(&w[i], &w[j])); d > size {
				first, second, size = i, j, d
			}
		}
	}
	return newPair(first, second)
}

// bestPair returns the pair by which the corner's equations are best solved near
// its static position: a strut's own two constraints, which are level and square
// to each other, or else the two rods that are most nearly so.
func (c *corner) bestPair() rowPair {
	if c.strut != nil {
		return newPair(c.n, c.n+1)
	}
	var w rows
	for i := range c.n {
		w[i].force = r3.Scale(c.rods[i].inv, c.rods[i].static)
	}
	return w.bestPair()
}

// plan returns the determinant of the level forces of two rows.
func plan(a, b *wrench) float64 { return a.force.X*b.force.Y - a.force.Y*b.force.X }

// newPair returns the pair of rows first and second.
func newPair(first, second int) rowPair {
	p := rowPair{first: first, second: second}
	k := 0
	for i := range cornerUnknowns {
		if i != first && i != second {
			p.others[k] = i
			k++
		}
	}
	return p
}

// factor sets s to the factors of w by a pair of its rows and returns the
// determinant of the equations over ω and v: 0 where they are singular or the
// pair is unfit.
func (s *split) factor(w *rows, by rowPair) float64 {
	s.pair = by
	p, q := &w[s.pair.first], &w[s.pair.second]
	d := plan(p, q)
	if !(math.Abs(d) > minPair) {
		return 0
	}
	i := 1 / d
	s.inv = [2][2]float64{{i * q.force.Y, -i * p.force.Y}, {-i * q.force.X, i * p.force.X}}
	var m [3]Vec
	for k, o := range s.pair.others {
		r := &w[o]
		a := r.force.X*s.inv[0][0] + r.force.Y*s.inv[1][0]
		b := r.force.X*s.inv[0][1] + r.force.Y*s.inv[1][1]
		s.share[k] = [2]float64{a, b}
		m[k] = reduce(r.moment, a, p.moment, b, q.moment)
	}
	return s.triple(&m, d)
}

// reduce returns x - a·p - b·q.
func reduce(x Vec, a float64, p Vec, b float64, q Vec) Vec {
	return Vec{X: x.X - a*p.X - b*q.X, Y: x.Y - a*p.Y - b*q.Y, Z: x.Z - a*p.Z - b*q.Z}
}

// triple sets the reciprocal vectors of m; d is the determinant of the pair.
func (s *split) triple(m *[3]Vec, d float64) float64 {
	c := r3.Cross(m[1], m[2])
	det := r3.Dot(m[0], c)
	if !(det*det > loose*loose*r3.Norm2(m[0])*r3.Norm2(m[1])*r3.Norm2(m[2])) { // also NaN
		return 0
	}
	i := 1 / det
	s.dual[0] = r3.Scale(i, c)
	s.dual[1] = r3.Scale(i, r3.Cross(m[2], m[0]))
	s.dual[2] = r3.Scale(i, r3.Cross(m[0], m[1]))
	if (s.pair.first+s.pair.second)%2 == 0 { // Laplace's sign of the pair
		d = -d
	}
	return d * det
}

// solve returns the movement that the rows w, of which s is the factored form,
// answer with b.
func (s *split) solve(w *rows, b *[cornerUnknowns]float64) (omega Vec, x, y float64) {
	p, q := b[s.pair.first], b[s.pair.second]
	for k, o := range s.pair.others {
		omega = axpy(b[o]-s.share[k][0]*p-s.share[k][1]*q, s.dual[k], omega)
	}
	p -= r3.Dot(w[s.pair.first].moment, omega)
	q -= r3.Dot(w[s.pair.second].moment, omega)
	return omega, s.inv[0][0]*p + s.inv[0][1]*q, s.inv[1][0]*p + s.inv[1][1]*q
}

// loads returns the multiples of the rows of w whose sum is a moment and no
// level force: the loads in the links under that moment.
func (s *split) loads(w *rows, moment Vec) (l [cornerUnknowns]float64) {
	for k, o := range s.pair.others {
		l[o] = r3.Dot(moment, s.dual[k])
		l[s.pair.first] -= s.share[k][0] * l[o]
		l[s.pair.second] -= s.share[k][1] * l[o]
	}
	return l
}
