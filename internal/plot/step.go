package plot

import "math"

// step is a distance between ticks: multiple/divisor for fractions of two and for
// decimals below one, so that each tick is the nearest float64 to its number.
type step struct{ multiple, divisor int64 }

func (s step) size() float64 { return float64(s.multiple) / float64(s.divisor) }

// value returns i steps.
func (s step) value(i int64) float64 { return float64(i) * float64(s.multiple) / float64(s.divisor) }

// maxIndex bounds the number of a tick counted from zero: beyond it float64 no
// longer tells neighbouring ticks apart.
const maxIndex = 1e14

// slack is the part of a step by which a tick may miss the domain: the ends are
// sums and differences of round numbers, and the tick at an end must not be lost.
const slack = 1e-9

// indices returns the first and last step within the domain.
func (s step) indices(d Domain) (first, last int64, ok bool) {
	from, to := math.Ceil(d.Low/s.size()-slack), math.Floor(d.High/s.size()+slack)
	if !(math.Abs(from) < maxIndex && math.Abs(to) < maxIndex) {
		return 0, 0, false
	}
	return int64(from), int64(to), true
}

// maxPower bounds steps to 10^-12 .. 10^12 times 1, 2 or 5: no dimension, angle or
// price of a car lies beyond.
const maxPower = 12

// decimalStep returns the least of 1, 2, 5 times a power of ten that is at least
// size.
func decimalStep(size float64) (step, bool) {
	if !(size > 0 && size <= 5e12) {
		return step{}, false
	}
	power := max(int(math.Floor(math.Log10(size)))-1, -maxPower)
	for ; power <= maxPower; power++ {
		for _, multiple := range [...]int64{1, 2, 5} {
			if s := decimal(multiple, power); s.size() >= size*(1-slack) {
				return s, true
			}
		}
	}
	return step{}, false
}

// decimal returns the step multiple·10^power.
func decimal(multiple int64, power int) step {
	scale := int64(math.Pow10(max(power, -power)))
	if power < 0 {
		return step{multiple, scale}
	}
	return step{multiple * scale, 1}
}

// decimals returns how many digits after the point the step needs.
func (s step) decimals() int {
	n := 0
	for d := s.divisor; d > 1; d /= 10 {
		n++
	}
	return n
}

// finest is the finest division of an inch that has a mark on a rule.
const finest = 64

// fractionStep returns the least of 1/64, 1/32 .. 1/2, 1, 2, 5, 10 .. that is at
// least size; below 1/64 there is none.
func fractionStep(size float64) (step, bool) {
	if !(size*finest > 1-slack) {
		return step{}, false
	}
	for divisor := int64(finest); divisor > 1; divisor /= 2 {
		if s := (step{1, divisor}); s.size() >= size*(1-slack) {
			return s, true
		}
	}
	return decimalStep(max(size, 1))
}
