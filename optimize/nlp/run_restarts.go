package nlp

import "math/rand/v2"

// drawsPerRestart is how many points are drawn for each restart, so that points
// where the model cannot be evaluated may be passed over.
const drawsPerRestart = 8

// haltonStream is the stream of random numbers that restarts draw from a seed.
const haltonStream uint64 = 1

// Halton is a sequence of points spread evenly over the unit box: each variable of
// point number i has the digits of i, in a prime base of its own, in reverse behind
// the point (Halton 1960), every digit replaced by another of the base. That breaks
// up the rows in which the points of neighbouring large bases stand, and makes
// another sequence of each seed.
type Halton []scramble

// scramble replaces digit d of a base by (factor·d + shift) mod base.
type scramble struct{ base, factor, shift int }

// NewHalton returns the sequence of a seed for a number of variables.
func NewHalton(variables int, seed uint64) Halton {
	rng := rand.New(rand.NewPCG(seed, haltonStream))
	h := make(Halton, 0, variables)
	for base := 2; len(h) < variables; base++ {
		if isPrime(base) {
			h = append(h, scramble{base, 1 + rng.IntN(base-1), rng.IntN(base)})
		}
	}
	return h
}

func isPrime(n int) bool {
	for d := 2; d*d <= n; d++ {
		if n%d == 0 {
			return false
		}
	}
	return true
}

// Point sets u to point number i.
func (h Halton) Point(i int, u []float64) {
	for j := range u {
		u[j] = h[j].radicalInverse(i)
	}
}

// radicalInverse returns the digits of i behind the point, the zeros before its first
// digit included as far as they count.
func (s *scramble) radicalInverse(i int) float64 {
	x, place := 0.0, 1.0
	for place > epsilon {
		place /= float64(s.base)
		x += place * float64((s.factor*(i%s.base)+s.shift)%s.base)
		i /= s.base
	}
	return min(x, 1)
}
