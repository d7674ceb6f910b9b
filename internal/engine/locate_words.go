package engine

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"toewright/internal/study"
	"toewright/optimize"
)

// outliers describes the measures that a fit left out.
func (t *taping) outliers(car *optimize.FittedCar) []TapeOutlierResult {
	out := []TapeOutlierResult{}
	for _, o := range car.TapeOutliers {
		one := t.outlier(&o)
		one.Likely = t.likely(o, car)
		for i := range o.Or {
			one.Or = append(one.Or, t.outlier(&o.Or[i]))
		}
		out = append(out, one)
	}
	return out
}

// outlier describes a measure that is or may be wrong.
func (t *taping) outlier(o *optimize.TapeOutlier) TapeOutlierResult {
	m := &t.all[o.Measure]
	one := TapeOutlierResult{
		Measure: strings.TrimPrefix(m.Path(), "measured."), From: m.From, To: m.To, Of: m.To, Value: m.Value,
		Expected: t.doc.Units.FromMillimetres(o.Expected), Score: o.Score,
	}
	if m.From != "" {
		one.Of = m.From + " to " + m.To
	}
	return one
}

const (
	// slipScore is how many standard deviations of the difference a slip's size may be off.
	slipScore = 3
	inch      = 25.4
)

// slipSizes are by how much a tape is misread, mm: common practice.
var slipSizes = []struct {
	mm    float64
	words string
}{
	{10, "10 mm"}, {100, "100 mm"}, {1000, "a metre"}, {inch, "an inch"}, {12 * inch, "a foot"}, {50, "50 mm"}, {5, "5 mm"}, {20, "20 mm"},
}

// rules are the lengths of rules that can be read from the wrong end, mm: common practice.
var rules = []float64{150, 300, 500, 600, 1000, 6 * inch, 12 * inch, 18 * inch, 24 * inch, 36 * inch}

// likely says which slip would make a measure of what was expected; "" where none would.
func (t *taping) likely(o optimize.TapeOutlier, car *optimize.FittedCar) string {
	m := &t.taped.Measures[o.Measure]
	off := m.Value - o.Expected
	near := func(a, b float64) bool { return math.Abs(a-b) <= slipScore*math.Abs(off/o.Score) }
	for _, other := range car.TapeOutliers {
		n := &t.taped.Measures[other.Measure]
		if other.Measure != o.Measure && n.Axis == m.Axis && near(m.Value, other.Expected) && near(n.Value, o.Expected) {
			return "exchanged with " + strings.TrimPrefix(t.all[other.Measure].Path(), "measured.") + "?"
		}
	}
	for _, s := range slipSizes {
		if near(math.Abs(off), s.mm) {
			return map[bool]string{true: s.words + " too much?", false: s.words + " too little?"}[off > 0]
		}
	}
	switch {
	case near(m.Value*inch, o.Expected):
		return "inches among millimetres?"
	case near(m.Value, -o.Expected):
		return "the sign reversed?"
	case m.Axis < 0 && slices.ContainsFunc(rules, func(rule float64) bool { return near(m.Value+o.Expected, rule) }):
		return "read from the wrong end of the rule?"
	}
	return ""
}

// words says what a location comes to.
func (l *locator) words() []string {
	r := l.out
	lines := []string{fmt.Sprintf("%d measures used, chi-square %.1f", r.DegreesOfFreedom, r.ChiSquare)}
	if r.Verdict == verdictNames[optimize.NotExplained] {
		lines = append(lines, "the measures differ by more than their standard deviations say: some are wrong or their sd is too small, and bands are too narrow")
	}
	for _, o := range r.Outliers {
		lines = append(lines, l.outlierWords(&o))
	}
	var open []string
	for _, p := range l.points {
		if !r.Points[p.label].Settled {
			open = append(open, p.label)
		}
	}
	if len(open) > 0 {
		lines = append(lines, "not settled by what was measured: "+strings.Join(open, ", "))
	}
	for _, side := range []study.Side{study.Left, study.Right} {
		toe, ok := r.Toe[string(side)]
		switch {
		case !ok:
		case toe.Problem != "":
			lines = append(lines, fmt.Sprintf("%s toe: none, %s", side, toe.Problem))
		default:
			lines = append(lines, fmt.Sprintf("%s toe change: %s with a standard deviation of %s at full bump, %s with %s at full droop", side,
				l.sayEnd(toe.Bump.Value), l.sayEnd(toe.Bump.SD), l.sayEnd(toe.Droop.Value), l.sayEnd(toe.Droop.SD)))
		}
	}
	if s := r.Spacer; s != nil {
		line := fmt.Sprintf("a spacer of %s moves the toe at an end of the window by %s: ", l.say(s.Step), l.sayEnd(s.Toe))
		if s.Narrow {
			line += "the bands are narrow enough to choose one"
		} else {
			line += "measure more before one is chosen"
		}
		lines = append(lines, line)
	}
	if len(r.Next) > 0 {
		lines = append(lines, "next, "+r.Next[0].Words)
	}
	return lines
}

// sayEnd formats a toe at an end of the window.
func (l *locator) sayEnd(toe Number) string { return l.sayToe(float64(toe)) }

// outlierWords says which measure was left out, and why, and which others may be wrong in
// its place.
func (t *taping) outlierWords(o *TapeOutlierResult) string {
	line := fmt.Sprintf("measured.%s, %s: %s was left out, all others say %s; measure it again", o.Measure, o.Of, t.say(o.Value), t.say(o.Expected))
	if o.Likely != "" {
		line += " (" + o.Likely + ")"
	}
	for i := range o.Or {
		n := &o.Or[i]
		line += fmt.Sprintf("; or it is measured.%s, %s, that is wrong: %s for %s", n.Measure, n.Of, t.say(n.Value), t.say(n.Expected))
	}
	return line
}
