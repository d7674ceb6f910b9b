package solver

import "math"

// node is a solution on a path: where it stands, how the unknowns change with s
// there, and det dF/dq.
type node struct {
	s        float64
	q, slope state
	det      float64
}

// trail holds solutions that a path has passed, the newest first.
type trail struct {
	nodes [2]node
	n     int
}

// maxStretch is the longest step, as a multiple of the distance of two nodes,
// that a prediction continues from them: beyond it the rounding in nodes close
// together outgrows what they know of the curve.
const maxStretch = 2.5

// add puts a solution before the others.
func (t *trail) add(p *node) {
	t.nodes[1] = t.nodes[0]
	t.nodes[0] = *p
	t.n = min(t.n+1, len(t.nodes))
}

// predict sets the first n of q to the solution expected at s = next: on the
// polynomial that passes now and the nodes of the trail with their slopes, of
// fifth degree where there are two, the tangent where there are none.
func (t *trail) predict(now *node, next float64, n int, q *state) {
	h := next - now.s
	switch t.useful(now.s, h) {
	case 0:
		for i := range n {
			q[i] = now.q[i] + h*now.slope[i]
		}
	case 1:
		a := &t.nodes[0]
		va, sa, s0 := hermiteOfTwo(a.s-now.s, h)
		for i := range n {
			q[i] = now.q[i] + s0*now.slope[i] + va*(a.q[i]-now.q[i]) + sa*a.slope[i]
		}
	default:
		a, b := &t.nodes[0], &t.nodes[1]
		w := hermiteOfThree(a.s-now.s, b.s-now.s, h)
		for i := range n {
			q[i] = now.q[i] + w.slope[0]*now.slope[i] +
				w.value[1]*(a.q[i]-now.q[i]) + w.slope[1]*a.slope[i] +
				w.value[2]*(b.q[i]-now.q[i]) + w.slope[2]*b.slope[i]
		}
	}
}

// growth returns the rate by s at which the determinant has changed up to now, 0
// where nothing is known of it.
func (t *trail) growth(now *node) float64 {
	if t.n == 0 {
		return 0
	}
	return (now.det - t.nodes[0].det) / (now.s - t.nodes[0].s)
}

// useful returns how many nodes of the trail serve a step of h from s.
func (t *trail) useful(s, h float64) int {
	for k := range t.n {
		if math.Abs(h) > maxStretch*math.Abs(s-t.nodes[k].s) {
			return k
		}
		s = t.nodes[k].s
	}
	return t.n
}

// hermiteOfTwo returns the weights, at h, of the value and the slope at a and of
// the slope at 0 in the cubic through both; the value at 0 has what is left to 1.
func hermiteOfTwo(a, h float64) (value, slope, slope0 float64) {
	x := h / a
	y := 1 - x
	return x * x * (1 + 2*y), -x * x * y * a, x * y * y * a
}

// weights are those of values and slopes at the nodes 0, a and b.
type weights struct{ value, slope [3]float64 }

// hermiteOfThree returns the weights, at h, in the polynomial of fifth degree
// that has given values and slopes at 0, a and b. The values' sum is 1.
func hermiteOfThree(a, b, h float64) (w weights) {
	ia, ib, iab := 1/a, 1/b, 1/(a-b)
	w.set(0, h, (h-a)*(h-b)*ia*ib, -ia-ib)
	w.set(1, h-a, h*(h-b)*ia*iab, ia+iab)
	w.set(2, h-b, -h*(h-a)*ib*iab, ib-iab)
	return w
}

// set gives node k its weights: l is its Lagrange polynomial, d the slope of that
// polynomial at the node, x the distance from the node.
func (w *weights) set(k int, x, l, d float64) {
	w.value[k] = (1 - 2*d*x) * l * l
	w.slope[k] = x * l * l
}
