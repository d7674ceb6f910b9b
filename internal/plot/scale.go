package plot

// Scale puts the values of a domain on a line of the paper: Low at From, High at
// To. From may be the larger, as it is where values grow upward.
type Scale struct {
	Domain
	From, To float64
}

// At returns the place of v, beyond From and To where v is beyond the domain. A
// domain without span puts everything in the middle.
func (s Scale) At(v float64) float64 {
	if s.Span() == 0 {
		return mix(s.From, s.To, 0.5)
	}
	return mix(s.From, s.To, (v-s.Low)/s.Span())
}

// Invert returns the value whose place is at; a scale without length gives Low.
func (s Scale) Invert(at float64) float64 {
	if s.From == s.To {
		return s.Low
	}
	return mix(s.Low, s.High, (at-s.From)/(s.To-s.From))
}

// Drag returns the scale with its domain moved so that what lay at from lies at to.
func (s Scale) Drag(from, to float64) Scale {
	s.Domain = s.Shift(s.Invert(from) - s.Invert(to))
	return s
}

// ZoomAt returns the scale with everything factor times as large and the place at
// unmoved, as a wheel or a pinch over it does.
func (s Scale) ZoomAt(at, factor float64) Scale {
	s.Domain = s.Zoom(s.Invert(at), factor)
	return s
}
