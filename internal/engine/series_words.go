package engine

import (
	"fmt"
	"strings"

	"toewright/internal/number"
)

// leastInCommon is by how much a single dimension must lower the chi-square to be pointed
// to, or to be told from another: one is then e³ times as likely as the other.
const leastInCommon = 6.0

// InCommon returns the likeliest of the deviations that the cars have in common, so many at
// most; none where there is nothing beyond chance.
func (r *SeriesResult) InCommon(most int) []CommonResult {
	if len(r.Common) == 0 || !(r.Common[0].Gain >= leastInCommon) {
		return nil
	}
	return r.Common[:min(len(r.Common), most)]
}

// mostAlike is how many dimensions that cannot be told apart are named.
const mostAlike = 3

// addWords says what a series comes to.
func (s *seriesJudge) addWords(r *SeriesResult) {
	near, open := 0, 0
	for i := range r.Cars {
		if r.Cars[i].Near {
			near++
		}
		if r.Cars[i].Verdict == SeriesOpen {
			open++
		}
	}
	add := func(format string, args ...any) { r.Words = append(r.Words, fmt.Sprintf(format, args...)) }
	switch c := r.Share; {
	case s.limit == nil:
		add("no limit is stated, so that no car passes or fails: state yield.limit")
	case c == nil:
		add("no car was judged")
	default:
		add("%d of %s judged pass, %s within %s: %s %%, 95 %% interval %s to %s %% (%s)", c.Passed, number.Count(c.Judged, "car"),
			r.Figure, s.sayToe(float64(r.Limit)), hundredths(c.Share), hundredths(c.Low), hundredths(c.High), c.Method)
	}
	if near > 0 {
		add("%s within their own band of the limit, where the readings leave the verdict to chance: read again", number.Count(near, "car"))
	}
	if open > 0 {
		add("%s left open, and not counted", number.Count(open, "car"))
	}
	r.Words = append(r.Words, s.commonWords(r.Common)...)
}

func hundredths(x Number) string { return number.Plain(number.Percent(100 * float64(x))) }

// commonWords says which dimension the cars point to.
func (s *seriesJudge) commonWords(list []CommonResult) []string {
	switch {
	case len(s.fitted) < 2:
		return []string{"what the cars have in common takes two cars or more"}
	case len(list) == 0, !(list[0].Gain >= leastInCommon):
		return []string{"the cars have nothing in common beyond chance that is off"}
	}
	first := &list[0]
	label, value := s.sayValue(first.Parameter, first.Alone)
	text := fmt.Sprintf("all cars point to one dimension: %s %s off, which alone explains %.0f %% of what they have in common", label, value, 100*first.Share)
	var others []string
	for i := 1; i < len(list) && len(others) < mostAlike && list[i].Gain > first.Gain-leastInCommon; i++ {
		label, value := s.sayValue(list[i].Parameter, list[i].Alone)
		others = append(others, label+" "+value)
	}
	if len(others) > 0 {
		text += "; instead it may be " + strings.Join(others, ", or ") + ", which the readings cannot tell from it: measure them, or say in priors which may be off"
	}
	return []string{text}
}
