package nlp

import "math"

// Extreme returns where a curve, of which some points are known, is largest, and that
// value; with least set, where it is least. f is the curve itself, asked only near such
// points as may hide the extreme between them and their neighbours: the points must stand
// near enough together that a curve goes up and down no more than once between two. It
// is NaN where f is.
func Extreme(at, values []float64, least bool, f func(float64) float64) (x, value float64) {
	e := extremeSearch{f: f, sign: 1}
	if least {
		e.sign = -1
	}
	e.value = math.Inf(-1)
	for i, v := range values {
		e.see(at[i], e.sign*v)
	}
	for i := 1; i < len(at)-1; i++ {
		before, here, after := e.sign*values[i-1], e.sign*values[i], e.sign*values[i+1]
		rise := math.Max(here-before, here-after)
		if here >= before && here >= after && here+rise > e.value {
			e.refine([3]float64{at[i-1], at[i], at[i+1]}, [3]float64{before, here, after})
		}
	}
	if last := len(at) - 1; last > 0 {
		e.end(at[0], at[1], e.sign*values[0], e.sign*values[1])
		e.end(at[last], at[last-1], e.sign*values[last], e.sign*values[last-1])
	}
	return e.x, e.sign * e.value
}

// end looks for a maximum between an end of the curve and the point next to it, where the
// end is the larger: there is one if the curve rises on its way from the end.
func (e *extremeSearch) end(at, next, value, beside float64) {
	if !(value >= beside && 2*value-beside > e.value) {
		return
	}
	near := at + endStep*(next-at)
	v := e.sign * e.f(near)
	e.see(near, v)
	switch {
	case !(v > value):
	case at < next:
		e.refine([3]float64{at, near, next}, [3]float64{value, v, beside})
	default:
		e.refine([3]float64{next, near, at}, [3]float64{beside, v, value})
	}
}

// extremeSearch looks for the largest value of sign·f.
type extremeSearch struct {
	f        func(float64) float64
	sign     float64
	x, value float64 // the largest so far
}

// see takes a value into account; NaN stays.
func (e *extremeSearch) see(x, v float64) {
	if !(v <= e.value) && !math.IsNaN(e.value) {
		e.x, e.value = x, v
	}
}

const (
	// extremeWidth is the share of an interval to which a maximum is narrowed down: of a
	// smooth curve the value is then exact to rounding, and of one with a kink, such as
	// the distance of two rods that cross, to a millionth of what it does in the interval.
	extremeWidth = 1e-6
	maxNarrowing = 60
	// endStep is how far from an end, as a share of the interval, it is seen whether the
	// curve rises there: a maximum nearer to the end is no higher to a millionth.
	endStep = 1e-3
	golden  = 0.3819660112501051 // (3-√5)/2
)

// refine narrows the largest value between the first and the last of three points down,
// of which the middle one has the largest value: Brent's method (Brent, Algorithms for
// Minimization without Derivatives, 1973, chapter 5), parabolas through the best three
// points and golden sections where those do not help.
func (e *extremeSearch) refine(at, v [3]float64) {
	lo, best, hi := at[0], at[1], at[2]
	tol := extremeWidth * (hi - lo)
	second, third, fBest, fSecond, fThird := lo, hi, v[1], v[0], v[2]
	if fThird > fSecond {
		second, third, fSecond, fThird = third, second, fThird, fSecond
	}
	step, before := hi-lo, hi-lo
	for range maxNarrowing {
		centre := (lo + hi) / 2
		if math.Abs(best-centre) <= 2*tol-(hi-lo)/2 {
			break
		}
		last := before
		before = step
		step = vertex(best, second, third, fBest, fSecond, fThird)
		if x := best + step; !(math.Abs(step) < math.Abs(last)/2 && x > lo && x < hi) {
			before = hi - best
			if best >= centre {
				before = lo - best
			}
			step = golden * before
		} else if x-lo < 2*tol || hi-x < 2*tol {
			step = math.Copysign(tol, centre-best)
		}
		if math.Abs(step) < tol {
			step = math.Copysign(tol, step)
		}
		x := best + step
		fx := e.sign * e.f(x)
		e.see(x, fx)
		switch {
		case fx >= fBest:
			if x >= best {
				lo = best
			} else {
				hi = best
			}
			third, second, best = second, best, x
			fThird, fSecond, fBest = fSecond, fBest, fx
		default:
			if x < best {
				lo = x
			} else {
				hi = x
			}
			switch {
			case fx >= fSecond || second == best:
				third, second = second, x
				fThird, fSecond = fSecond, fx
			case fx >= fThird || third == best || third == second:
				third, fThird = x, fx
			}
		}
	}
}

// vertex returns how far from a the vertex of the parabola through three points lies; NaN
// where there is none.
func vertex(a, b, c, fa, fb, fc float64) float64 {
	r, q := (a-b)*(fa-fc), (a-c)*(fa-fb)
	return -((a-c)*q - (a-b)*r) / (2 * (q - r))
}
