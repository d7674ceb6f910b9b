package optimize

import "math"

// Measure says how the residuals of one group become one number.
type Measure uint8

// The measures. RMS is the root of the weighted mean square; Peak the largest
// weighted size.
const (
	RMS Measure = iota
	Peak
)

// String returns "rms" or "peak".
func (m Measure) String() string {
	switch m {
	case RMS:
		return "rms"
	case Peak:
		return "peak"
	}
	return "unknown measure"
}

// Across says how the numbers of several groups become one.
type Across uint8

// The ways across groups. Mean is the weighted mean, for [RMS] the root of the
// weighted mean of the squares; Worst is the largest, whatever the weights.
const (
	Mean Across = iota
	Worst
)

// String returns "mean" or "worst".
func (a Across) String() string {
	switch a {
	case Mean:
		return "mean"
	case Worst:
		return "worst"
	}
	return "unknown combination"
}

// Group is a run of consecutive residuals that are measured together, such as
// one set-up that a part must serve.
type Group struct {
	Residuals int     // how many; at least 1
	Weight    float64 // share in [Mean]; zero leaves the group out of everything
}

// Objective is what a search minimises. The zero value is the plain root mean
// square of all residuals.
type Objective struct {
	Measure Measure
	Across  Across
	// Weights has one number >= 0 for each residual; nil means 1 for each. For
	// RMS they weigh the squares, and the divisor is their sum. For Peak they
	// multiply the sizes. A residual of weight zero is left out.
	Weights []float64
	// Groups divides the residuals in order; nil means one group of all.
	Groups []Group
}

// Value returns the objective for the residuals r. The objective must suit
// their number, or Value panics.
func (o *Objective) Value(r []float64) float64 {
	s, err := newScale(o, len(r))
	if err != nil {
		panic(err)
	}
	return s.value(r)
}

// span is the residuals [from, to) of one group that counts.
type span struct {
	from, to int
	share    float64 // of the sum of group weights
}

// scale is an objective made ready: normalised weights and non-empty groups.
type scale struct {
	measure Measure
	across  Across
	weights []float64 // RMS: sum to 1 in each group; Peak: as given
	spans   []span    // groups of weight > 0
}

// newScale checks the objective against the number of residuals.
func newScale(o *Objective, residuals int) (*scale, error) {
	s := &scale{measure: o.Measure, across: o.Across, weights: ones(residuals)}
	if o.Weights != nil {
		if len(o.Weights) != residuals {
			return nil, problemErrorf("%d weights for %d residuals, want one for each", len(o.Weights), residuals)
		}
		copy(s.weights, o.Weights)
	}
	groups := o.Groups
	if groups == nil {
		groups = []Group{{Residuals: residuals, Weight: 1}}
	}
	if err := s.addGroups(groups, residuals); err != nil {
		return nil, err
	}
	return s, s.normalise()
}

// addGroups fills spans and checks that the groups cover the residuals.
func (s *scale) addGroups(groups []Group, residuals int) error {
	at, sum := 0, 0.0
	for i, g := range groups {
		if g.Residuals < 1 || !(g.Weight >= 0) || math.IsInf(g.Weight, 0) {
			return problemErrorf("group %d has %d residuals and weight %g, want at least 1 residual and a finite weight of at least 0", i, g.Residuals, g.Weight)
		}
		if g.Weight > 0 {
			s.spans = append(s.spans, span{at, at + g.Residuals, g.Weight})
		}
		at += g.Residuals
		sum += g.Weight
	}
	if at != residuals {
		return problemErrorf("groups hold %d residuals, want %d", at, residuals)
	}
	if !(sum > 0) {
		return problemErrorf("all groups have weight 0, want one above 0")
	}
	for i := range s.spans {
		s.spans[i].share /= sum
	}
	return nil
}

// normalise checks the weights and, for RMS, makes them sum to 1 in each group.
func (s *scale) normalise() error {
	for i, w := range s.weights {
		if !(w >= 0) || math.IsInf(w, 0) {
			return problemErrorf("weight %d is %g, want a finite number of at least 0", i, w)
		}
	}
	for _, g := range s.spans {
		w := s.weights[g.from:g.to]
		sum := 0.0
		for _, v := range w {
			sum += v
		}
		if !(sum > 0) {
			return problemErrorf("all weights of residuals %d to %d are 0, want one above 0", g.from, g.to-1)
		}
		if s.measure == RMS {
			for i := range w {
				w[i] /= sum
			}
		}
	}
	return nil
}

// value returns the objective for r.
func (s *scale) value(r []float64) float64 {
	if s.measure == Peak {
		return s.combine(func(g span) float64 { return s.peak(g, r) })
	}
	return math.Sqrt(s.combine(func(g span) float64 { return s.meanSquare(g, r) }))
}

// combine takes one figure for each group across the groups.
func (s *scale) combine(figure func(span) float64) float64 {
	total := 0.0
	for _, g := range s.spans {
		if s.across == Worst {
			total = math.Max(total, figure(g))
		} else {
			total += g.share * figure(g)
		}
	}
	return total
}

// meanSquare returns the weighted mean square of one group.
func (s *scale) meanSquare(g span, r []float64) float64 {
	sum := 0.0
	for i := g.from; i < g.to; i++ {
		sum += s.weights[i] * r[i] * r[i]
	}
	return sum
}

// peak returns the largest weighted size in one group.
func (s *scale) peak(g span, r []float64) float64 {
	top := 0.0
	for i := g.from; i < g.to; i++ {
		top = math.Max(top, s.weights[i]*math.Abs(r[i]))
	}
	return top
}

func ones(n int) []float64 {
	s := make([]float64, n)
	for i := range s {
		s[i] = 1
	}
	return s
}
