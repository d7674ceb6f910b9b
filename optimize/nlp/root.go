package nlp

import "math"

// maxRootSteps bounds the search for a root. Half of the steps are bisections at
// worst.
const maxRootSteps = 100

// Root returns where f vanishes between lo, where it is negative, and hi,
// where it is positive, to within tol (false position with halved weights of an
// end that stays: the Illinois method, Dowell and Jarratt 1971; from memory).
func Root(f func(float64) float64, lo, hi, tol float64) float64 {
	flo, fhi := f(lo), f(hi)
	x := lo
	for side, k := 0, 0; k < maxRootSteps && hi-lo > tol; k++ {
		next := lo + (hi-lo)*flo/(flo-fhi)
		fx := f(next)
		if math.Abs(next-x) <= tol && k > 0 || fx == 0 {
			return next
		}
		x = next
		switch {
		case fx < 0:
			lo, flo = x, fx
			if side < 0 {
				fhi /= 2
			}
			side = -1
		default:
			hi, fhi = x, fx
			if side > 0 {
				flo /= 2
			}
			side = 1
		}
	}
	return x
}
