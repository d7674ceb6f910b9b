package nlp

import (
	"math"

	"gonum.org/v1/gonum/floats"
)

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
	// Wheels is in how many equal parts the group falls, one after the other, of which
	// the worst counts; 0 means one.
	Wheels int
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

// span is residuals [from, to) that have one figure.
type span struct {
	from, to int
	bundle   int
}

// scale is an objective made ready. Spans are gathered in bundles, of each of which
// the worst counts, and the mean is taken over those: [Worst] is one bundle of all.
type scale struct {
	measure Measure
	weights []float64 // RMS: sum to 1 in each span; Peak: as given
	spans   []span    // of groups of weight > 0, those of a bundle together
	shares  []float64 // of each bundle in the mean; their sum is 1
}

// newScale checks the objective against the number of residuals.
func newScale(o *Objective, residuals int) (*scale, error) {
	s := &scale{measure: o.Measure, weights: ones(residuals)}
	if o.Weights != nil {
		if len(o.Weights) != residuals {
			return nil, ProblemErrorf("%d weights for %d residuals, want one for each", len(o.Weights), residuals)
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
	s.bundle(o.Across)
	return s, s.normalise()
}

// addGroups fills spans, with one bundle for each group, and checks that the groups
// cover the residuals.
func (s *scale) addGroups(groups []Group, residuals int) error {
	at, sum := 0, 0.0
	for i, g := range groups {
		if g.Residuals < 1 || !(g.Weight >= 0) || math.IsInf(g.Weight, 0) {
			return ProblemErrorf("group %d has %d residuals and weight %g, want at least 1 residual and a finite weight of at least 0", i, g.Residuals, g.Weight)
		}
		wheels := max(g.Wheels, 1)
		if g.Residuals%wheels != 0 {
			return ProblemErrorf("group %d has %d residuals of %d wheels, want as many of each", i, g.Residuals, wheels)
		}
		if g.Weight > 0 {
			s.addGroup(at, g.Residuals/wheels, wheels, g.Weight)
		}
		at += g.Residuals
		sum += g.Weight
	}
	if at != residuals {
		return ProblemErrorf("groups hold %d residuals, want %d", at, residuals)
	}
	if !(sum > 0) {
		return ProblemErrorf("all groups have weight 0, want one above 0")
	}
	floats.Scale(1/sum, s.shares)
	return nil
}

// addGroup adds a bundle of so many spans, as long each, from a residual on.
func (s *scale) addGroup(from, length, spans int, weight float64) {
	for range spans {
		s.spans = append(s.spans, span{from, from + length, len(s.shares)})
		from += length
	}
	s.shares = append(s.shares, weight)
}

// bundle gathers the bundles in one where the worst of all counts.
func (s *scale) bundle(across Across) {
	if across != Worst {
		return
	}
	for i := range s.spans {
		s.spans[i].bundle = 0
	}
	s.shares = []float64{1}
}

// normalise checks the weights and, for RMS, makes them sum to 1 in each span.
func (s *scale) normalise() error {
	for i, w := range s.weights {
		if !(w >= 0) || math.IsInf(w, 0) {
			return ProblemErrorf("weight %d is %g, want a finite number of at least 0", i, w)
		}
	}
	for _, g := range s.spans {
		w := s.weights[g.from:g.to]
		sum := 0.0
		for _, v := range w {
			sum += v
		}
		if !(sum > 0) {
			return ProblemErrorf("all weights of residuals %d to %d are 0, want one above 0", g.from, g.to-1)
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

// combine takes one figure for each span across the bundles.
func (s *scale) combine(figure func(span) float64) float64 {
	total := 0.0
	for i := 0; i < len(s.spans); {
		worst, b := 0.0, s.spans[i].bundle
		for ; i < len(s.spans) && s.spans[i].bundle == b; i++ {
			worst = math.Max(worst, figure(s.spans[i]))
		}
		total += s.shares[b] * worst
	}
	return total
}

// meanSquare returns the weighted mean square of one span.
func (s *scale) meanSquare(g span, r []float64) float64 {
	sum := 0.0
	for i := g.from; i < g.to; i++ {
		sum += s.weights[i] * r[i] * r[i]
	}
	return sum
}

// peak returns the largest weighted size in one span.
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
