package optimize

import (
	"math"
	"strconv"

	"toewright/optimize/nlp"
)

// inch is an inch in mm, exactly.
const inch = 25.4

// hypotheses returns the slips that are looked for, each put right.
func (p *GaugeFit) hypotheses() []hypothesis {
	var out []hypothesis
	for i := range p.Sets {
		out = append(out, p.wholeSlips(i)...)
		out = append(out, p.signSlips(i)...)
		out = append(out, p.digitSlips(i)...)
		out = append(out, p.swaps(i)...)
	}
	return out
}

const (
	// inchTravel is the largest travel, as written, that may be one in inches:
	// more than any suspension has.
	inchTravel = 12
	// farTravel is the least that may be inches turned into millimetres twice.
	farTravel = inchTravel * inch
	// wideSpread is the least spread of readings, as a share of the base, that may
	// be millimetres taken for inches: 3 deg over the half of a run.
	wideSpread = 0.05
)

// spread returns the width of the middle half of the readings, mm.
func (s *ReadingSet) spread() float64 {
	var values []float64
	for _, r := range s.Readings {
		values = append(values, r.Value)
	}
	q := nlp.Quantiles(values, 0.25, 0.75)
	return q[1] - q[0]
}

// wholeSlips are those that a whole set shares.
func (p *GaugeFit) wholeSlips(set int) []hypothesis {
	var out []hypothesis
	add := func(kind SlipKind, travel, value float64) {
		n := len(p.Sets[set].Readings)
		out = append(out, hypothesis{
			slip: Slip{Kind: kind, Set: set, Other: -1, End: n},
			sets: p.rewritten(set, func(_ int, r *Reading) {
				r.Travel *= travel
				r.Value *= value
			}),
			stretch: float64(n) * math.Log(value),
		})
	}
	add(InchSlip, 1, inch)
	if p.Sets[set].spread() >= wideSpread*p.Sets[set].Base {
		add(InchSlip, 1, 1/inch)
	}
	add(TravelSignSlip, -1, 1)
	travels := travelsOf(&p.Sets[set])
	switch far := math.Max(-travels[0], travels[len(travels)-1]); {
	case far <= inchTravel:
		add(TravelInchSlip, inch, 1)
	case far >= farTravel:
		add(TravelInchSlip, 1/inch, 1)
	}
	return out
}

// signSlips are signs reversed from some reading to the end, or from the first to
// some reading.
func (p *GaugeFit) signSlips(set int) []hypothesis {
	n := len(p.Sets[set].Readings)
	var out []hypothesis
	add := func(first, end int) {
		s := Slip{Kind: SignSlip, Set: set, Other: -1, First: first, End: end}
		out = append(out, hypothesis{slip: s, sets: p.rewritten(set, func(i int, r *Reading) {
			if i >= first && i < end {
				r.Value = -r.Value
			}
		})})
	}
	for k := range n {
		add(k, n)
		if k > 0 {
			add(0, k)
		}
	}
	return out
}

// digitSlips are numbers miswritten in one reading.
func (p *GaugeFit) digitSlips(set int) []hypothesis {
	var out []hypothesis
	for i, r := range p.Sets[set].Readings {
		for _, likely := range misreadings(r.Value) {
			s := Slip{Kind: DigitSlip, Set: set, Other: -1, First: i, End: i + 1, Value: r.Value, Likely: likely}
			if likely == r.Value*inch || likely == r.Value/inch {
				s.Kind = InchSlip
			}
			out = append(out, hypothesis{slip: s, sets: p.rewritten(set, func(k int, r *Reading) {
				if k == i {
					r.Value = likely
				}
			})})
		}
	}
	return out
}

// swaps exchange a set with a later one of the other side in the same set-up.
func (p *GaugeFit) swaps(set int) []hypothesis {
	var out []hypothesis
	for k := set + 1; k < len(p.Sets); k++ {
		a, b := &p.Sets[set], &p.Sets[k]
		if a.Side == b.Side || !sameChanges(a.Changes, b.Changes) || len(a.Readings) != len(b.Readings) {
			continue
		}
		sets := append([]ReadingSet(nil), p.Sets...)
		sets[set].Readings, sets[k].Readings = b.Readings, a.Readings
		s := Slip{Kind: SwappedSidesSlip, Set: set, Other: k, End: len(a.Readings)}
		out = append(out, hypothesis{slip: s, sets: sets})
	}
	return out
}

// misreadings returns what may have been meant by a number as it was written: the
// decimal point a place off, a digit too many, two digits exchanged, another
// sign, another unit.
func misreadings(v float64) []float64 {
	if v == 0 {
		return nil
	}
	out := []float64{v * 10, v / 10, v * 100, v / 100, -v, v * inch, v / inch}
	text := strconv.FormatFloat(math.Abs(v), 'f', -1, 64)
	for i := range text {
		if text[i] == '.' {
			continue
		}
		out = appendNumber(out, v, text[:i]+text[i+1:])
		if next := i + 1; next < len(text) && text[next] != '.' {
			out = appendNumber(out, v, text[:i]+text[next:next+1]+text[i:i+1]+text[next+1:])
		}
	}
	return out
}

// appendNumber appends the number that a text stands for, with the sign of v.
func appendNumber(out []float64, v float64, text string) []float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || x == math.Abs(v) {
		return out
	}
	return append(out, math.Copysign(x, v))
}
