package plot

// Domain is a range of values, Low to High, in whatever unit the values have.
type Domain struct{ Low, High float64 }

// DomainOf returns the least domain that holds every value; gaps are passed over.
// Without a single value it is the zero Domain and ok is false.
func DomainOf(lists ...[]float64) (d Domain, ok bool) {
	for _, values := range lists {
		for _, v := range values {
			if finite(v) {
				d, ok = d.include(v, ok), true
			}
		}
	}
	return d, ok
}

func (d Domain) include(v float64, begun bool) Domain {
	if !begun {
		return Domain{v, v}
	}
	return Domain{min(d.Low, v), max(d.High, v)}
}

// Span returns High - Low.
func (d Domain) Span() float64 { return d.High - d.Low }

// Contains reports whether v is within the domain, ends included.
func (d Domain) Contains(v float64) bool { return v >= d.Low && v <= d.High }

// Widen returns the domain grown about its middle until it spans at least least,
// so that a curve that is flat by the numbers is drawn flat, not as its noise.
func (d Domain) Widen(least float64) Domain {
	if d.Span() >= least {
		return d
	}
	middle := d.Low + d.Span()/2
	return Domain{middle - least/2, middle + least/2}
}

// Symmetric returns the least domain about zero that holds d, for values whose
// sign matters, as toe in and toe out.
func (d Domain) Symmetric() Domain {
	reach := max(-d.Low, d.High)
	return Domain{-reach, reach}
}

// Zoom returns the domain with everything factor times as large and the value
// about at its place.
func (d Domain) Zoom(about, factor float64) Domain {
	return Domain{about + (d.Low-about)/factor, about + (d.High-about)/factor}
}

// Shift returns the domain moved by step.
func (d Domain) Shift(step float64) Domain { return Domain{d.Low + step, d.High + step} }

// Within returns the domain moved, and cut only where it is too wide, to lie in
// outer: a pan stops at the end of the curve.
func (d Domain) Within(outer Domain) Domain {
	switch {
	case d.Span() >= outer.Span():
		return outer
	case d.Low < outer.Low:
		return Domain{outer.Low, outer.Low + d.Span()}
	case d.High > outer.High:
		return Domain{outer.High - d.Span(), outer.High}
	}
	return d
}
