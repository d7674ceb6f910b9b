package plot

import (
	"toewright/internal/number"
)

// Tick is a value of an axis that is worth a gridline, and its label.
type Tick struct {
	Value float64
	Label string
}

// Ticks appends the multiples of 1, 2 or 5 times a power of ten within the domain,
// at most most of them and, from four up, at least a third of that, all with the same
// number of decimals. From three up there are two at least, of 4 times a power of ten
// where no other step gives them: one figure is no scale. A domain without span or with a
// NaN has no ticks, and neither has most below 2.
func Ticks(dst []Tick, d Domain, most int) []Tick {
	s, ok := decimalStep(spacing(d, most))
	if !ok {
		return dst
	}
	s = s.pair(d, most, decimalStep)
	places := s.decimals()
	return s.ticks(dst, d, func(v float64) string { return number.Decimal(v, places) })
}

// FractionTicks appends ticks for inches, at multiples of 1/64, 1/32 .. 1/2 and of
// 1, 2, 5 times a power of ten, with labels as "1 1/8". Where the domain is too narrow
// for two of 1/64 it falls back to decimals.
func FractionTicks(dst []Tick, d Domain, most int) []Tick {
	s, ok := fractionStep(spacing(d, most))
	if !ok {
		return Ticks(dst, d, most)
	}
	if s = s.pair(d, most, fractionStep); s.count(d) < 2 {
		return Ticks(dst, d, most)
	}
	return s.ticks(dst, d, func(v float64) string { return number.Fraction(v, finest) })
}

// pair returns the step itself or, where it has less than two ticks in a domain, a finer one
// of a ladder that has two or more, but no more than most.
func (s step) pair(d Domain, most int, ladder func(float64) (step, bool)) step {
	if s.count(d) >= 2 {
		return s
	}
	const below = 0.4 // from 5 down to 2 is the longest way of the ladders
	finer, ok := ladder(s.size() * below)
	if !ok {
		return s
	}
	for ; finer.count(d) > most; finer.multiple *= 2 {
	}
	if finer.count(d) < 2 {
		return s
	}
	return finer
}

// count returns the number of ticks within a domain.
func (s step) count(d Domain) int {
	first, last, ok := s.indices(d)
	if !ok || last < first {
		return 0
	}
	return int(last - first + 1)
}

// spacing returns the least distance between ticks that leaves at most most.
func spacing(d Domain, most int) float64 { return d.Span() / float64(max(most-1, 0)) }

func (s step) ticks(dst []Tick, d Domain, label func(float64) string) []Tick {
	first, last, ok := s.indices(d)
	if !ok {
		return dst
	}
	for i := first; i <= last; i++ {
		v := s.value(i)
		dst = append(dst, Tick{v, label(v)})
	}
	return dst
}

// Nice returns the domain grown until both ends are among its own [Ticks]. Where
// there are no ticks it returns d.
func (d Domain) Nice(most int) Domain {
	s, ok := decimalStep(spacing(d, most))
	if !ok {
		return d
	}
	grown := s.around(d)
	if s.suits(grown, most) {
		return grown
	}
	// Grown, d asks for a coarser step; that one may do with less growth.
	if coarser, ok := decimalStep(spacing(grown, most)); ok {
		if g := coarser.around(d); coarser.suits(g, most) {
			return g
		}
	}
	return grown.Nice(most)
}

// suits reports whether s is the step of the ticks of d.
func (s step) suits(d Domain, most int) bool {
	own, ok := decimalStep(spacing(d, most))
	return !ok || own == s
}

// around returns the least domain with ends at whole steps that holds d.
func (s step) around(d Domain) Domain {
	first, last, ok := s.indices(d)
	if !ok {
		return d
	}
	grown := Domain{s.value(first), s.value(last)}
	if grown.Low > d.Low+slack*s.size() {
		grown.Low = s.value(first - 1)
	}
	if grown.High < d.High-slack*s.size() {
		grown.High = s.value(last + 1)
	}
	return grown
}
