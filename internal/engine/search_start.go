package engine

// sameFigure is the share by which two figures may differ by rounding.
const sameFigure = 1e-9

// startNote says that the values of an answer that are to be taken are no better than
// the car as it stands, and why; "" where they are better, or where that car does not
// reach the window.
func (s *searcher) startNote(r *SearchResult) string {
	taken, start := s.judged(r)
	switch {
	case !start.Valid() || !taken.Valid() || taken < start*(1-sameFigure):
		return ""
	case taken <= start*(1+sameFigure):
		return "nothing better than the car as it stands was found"
	}
	worse := "the toe change is larger than that of the car as it stands"
	switch {
	case r.Rounded != nil:
		return worse + ", which is not on the grids stated or breaks a limit by more"
	case !s.startWithin():
		return worse + ", which lies beyond the bounds of the variables"
	}
	return worse + ", which breaks a limit by more"
}

// judged returns what the search makes small, degrees: of the values to be taken and of
// the car as it stands.
func (s *searcher) judged(r *SearchResult) (taken, start Number) {
	switch {
	case r.Robust != nil && r.Rounded != nil:
		return r.Rounded.AtPercentile, r.Robust.Start
	case r.Robust != nil:
		return r.Robust.Figure, r.Robust.Start
	case r.Rounded != nil:
		return degrees(s.problem.Score(s.point(r.Rounded.Values))), r.Start.Score
	}
	return r.Best.Score, r.Start.Score
}

// startWithin reports whether the car as it stands lies within the variables' bounds.
func (s *searcher) startWithin() bool {
	for i, x := range s.problem.Start() {
		if f := &s.problem.Free[i]; !(x >= f.Min && x <= f.Max) {
			return false
		}
	}
	return true
}
