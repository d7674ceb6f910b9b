package engine

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"toewright/internal/number"
	"toewright/optimize"
	"toewright/solver"
)

// say formats a length, in file units, as the study shows it.
func (c *cars) say(x float64) string {
	return number.Plain(c.doc.Style().Length(c.doc.Units.Millimetres(x)))
}

// sayTravel formats a travel, in file units.
func (c *cars) sayTravel(x float64) string {
	return number.Plain(c.doc.Style().Travel(c.doc.Units.Millimetres(x)))
}

// sayToe formats a toe of degrees in the unit shown, without the base of a length.
func (c *cars) sayToe(deg float64) string {
	s := c.doc.Style()
	return number.Plain(s.Toe(deg)) + " " + s.ToeMark()
}

// sayValue formats the value of a parameter, in file units or degrees, and its label.
func (c *cars) sayValue(key string, x float64) (label, value string) {
	p, sides, err := solver.FindParameter(c.design, key)
	if err != nil {
		return key, number.Trimmed(x, 3)
	}
	unit := string(c.doc.Units)
	if p.Quantity == solver.AngleQuantity {
		unit = "deg"
	}
	label = p.Label
	if suffix := sides.Suffix(); suffix != "" {
		label += ", " + suffix[1:]
	}
	return label, number.Plain(c.doc.Style().AmountText(x, unit, c.doc.Units))
}

// addWords says what a fit comes to.
func (f *fitter) addWords(r *FitResult) {
	r.VerdictWords = f.verdictWords(r)
	doubts := f.doubtWords(r)
	r.Words = append(append(slices.Clone(r.Nothing), r.VerdictWords), doubts...)
	r.Remarks = append(slices.Clone(r.Nothing), doubts...)
	for _, side := range []string{"left", "right"} {
		if a, ok := r.Advice[side]; ok {
			lean := f.leanWords(side, &a, r)
			r.Words = append(append(r.Words, f.adviceWords(side, &a)...), lean...)
			r.Remarks = append(r.Remarks, lean...)
		}
	}
	next := f.nextWords(r)
	r.Words, r.Remarks = append(r.Words, next...), append(r.Remarks, next...)
}

// doubtWords says what may be wrong with what was written down.
func (f *fitter) doubtWords(r *FitResult) []string {
	lines := f.priorWords()
	for _, o := range r.Outliers {
		lines = append(lines, fmt.Sprintf("reading %d of set %d (%s, travel %s) was left out: it is %s away from what all the others say, %.1f standard deviations; read it again",
			o.Reading+1, o.Set+1, o.Side, f.sayTravel(o.Travel), f.say(math.Abs(o.Off)), math.Abs(o.Score)))
	}
	for _, o := range r.TapeOutliers {
		lines = append(lines, f.taping.outlierWords(&o))
	}
	for _, s := range r.Slips {
		lines = append(lines, s.Words)
	}
	for _, p := range r.Play {
		lines = append(lines, fmt.Sprintf("bump and droop runs differ by %s at travel %s: look for play", f.say(math.Abs(p.Gap)), f.sayTravel(p.Travel)))
	}
	return lines
}

// nextWords says what to measure next, and whether readings after fitting pass.
func (f *fitter) nextWords(r *FitResult) (lines []string) {
	if len(r.Next) > 0 && !f.allFinal(r) {
		lines = append(lines, "to know it better: "+r.Next[0].Words)
	}
	lines = append(lines, f.oneWayWords()...)
	return append(lines, f.verifyWords(r.Verify)...)
}

// priorWords says what stood for the hardpoints' tolerances where the study states none,
// and whether the readings asked for more.
func (f *fitter) priorWords() []string {
	switch {
	case f.widened == 0:
		return nil
	case f.widened > 1:
		return []string{fmt.Sprintf("no priors are stated, and the readings ask for hardpoints further off than is usual with a tape: %g times that was assumed, and it may be more; measure the hardpoints, or say in priors how far off they may be", f.widened)}
	}
	return []string{"no priors are stated: hardpoints were assumed to be as accurate as a tape usually is; where the file is a template of another car, say in priors how far off it may be"}
}

// oneWayWords says what runs in one direction leave unseen, and how to see it.
func (f *fitter) oneWayWords() []string {
	var sides []string
	for _, side := range solver.Sides {
		read, ways := false, map[optimize.RunDirection]bool{}
		for i := range f.problem.Sets {
			if s := &f.problem.Sets[i]; s.Side == side {
				read, ways[s.Run] = true, true
			}
		}
		if read && !(ways[optimize.BumpRun] && ways[optimize.DroopRun]) {
			sides = append(sides, side.String())
		}
	}
	if len(sides) == 0 {
		return nil
	}
	return []string{strings.Join(sides, " and ") + " side: play cannot be seen in runs that go one way, or do not say which: it stands in them as if it were geometry; " +
		"read the same travels once into bump and once back into droop, each run with its \"direction\""}
}

func (f *fitter) verdictWords(r *FitResult) string {
	switch r.Verdict {
	case "not explained":
		return fmt.Sprintf("no car near the one stated gives these readings (chi-square %.1f on %d degrees of freedom): check hardpoints, sides, base and repeatability before you trust what follows", r.ChiSquare, r.DegreesOfFreedom)
	case "too good":
		return fmt.Sprintf("the readings scatter less than their repeatability says (chi-square %.1f on %d degrees of freedom): the bands are wider than they need be", r.ChiSquare, r.DegreesOfFreedom)
	}
	return fmt.Sprintf("a car near the one stated explains the readings (chi-square %.1f on %d degrees of freedom)", r.ChiSquare, r.DegreesOfFreedom)
}

func (f *fitter) allFinal(r *FitResult) bool {
	for _, a := range r.Advice {
		if !a.Final {
			return false
		}
	}
	return true
}

// adviceWords says what to fit on a side and what to expect of it.
func (f *fitter) adviceWords(side string, a *AdviceResult) []string {
	what := f.doc.Advise.Parameter
	first := fmt.Sprintf("%s side: %s", side, f.moveWords(what, a))
	if !a.Final {
		first += "; read again with that fitted"
	}
	lines := []string{first}
	lines = append(lines, fmt.Sprintf("%s side: expect %s of toe change (%s to %s) at most over the window",
		side, f.toeWords(a.Expect.Peak.Value), f.toeWords(a.Expect.Peak.Low), f.toeWords(a.Expect.Peak.High)))
	if a.Turns.Valid() && math.Abs(float64(a.Turns)) >= 0.05 {
		longer := "longer"
		if a.Turns < 0 {
			longer = "shorter"
		}
		lines = append(lines, fmt.Sprintf("%s side: then turn the adjuster %.1f turns to make the tie rod %s %s, and set toe",
			side, math.Abs(float64(a.Turns)), f.say(math.Abs(a.TieRod)), longer))
	}
	return lines
}

// leanWords says where a gauge that leans could move the advice by more than half a
// step, and which reading would settle that.
func (f *fitter) leanWords(side string, a *AdviceResult, r *FitResult) []string {
	if a.SettlesLean == "" {
		return nil
	}
	return []string{fmt.Sprintf("%s side: a gauge that gains steadily with travel, %.2g of it one standard deviation, could move the best value by %s, more than half a step; to settle it: %s",
		side, r.Fitted["gaugeSlope@"+side].PriorSD, f.advised(a.Lean), a.SettlesLean)}
}

// advised says a value, or a change, of the advised parameter.
func (f *fitter) advised(v float64) string {
	p, _, err := solver.FindParameter(f.design, f.doc.Advise.Parameter)
	if err != nil || p.Quantity == solver.AngleQuantity {
		return fmt.Sprintf("%.3g deg", v)
	}
	return f.say(v)
}

// moveWords says the change from what is fitted now, in steps where there are any.
func (f *fitter) moveWords(parameter string, a *AdviceResult) string {
	p, _, err := solver.FindParameter(f.design, parameter)
	if err != nil || p.Quantity == solver.AngleQuantity {
		label, best := f.sayValue(parameter, a.Best)
		_, low := f.sayValue(parameter, a.Low)
		_, high := f.sayValue(parameter, a.High)
		return fmt.Sprintf("set %s to %s (%s to %s)", label, best, low, high)
	}
	band := fmt.Sprintf("%s, between %s and %s with 90 %% probability", f.say(a.Best), f.say(a.Low), f.say(a.High))
	step := f.doc.Advise.Step
	if step == 0 {
		return fmt.Sprintf("best %s is %s from the car as stated", p.Label, band)
	}
	more := int(math.Round((a.Value - a.Fitted) / step))
	switch {
	case more == 0:
		return fmt.Sprintf("leave %s as it is now fitted (best %s from the car as stated)", p.Label, band)
	case parameter == "tieRodOuterHeight":
		return fmt.Sprintf("%s (best %s from the car as stated)", f.spacerWords(a, step), band)
	}
	return fmt.Sprintf("change %s by %+d steps of %s (best %s from the car as stated)", p.Label, more, f.say(step), band)
}

// spacerWords says what to do with the stack of spacers at the outer ball, from
// what is fitted now.
func (f *fitter) spacerWords(a *AdviceResult, step float64) string {
	now, then := int(math.Round(a.Fitted/step)), int(math.Round(a.Value/step))
	where := map[bool]string{true: "below", false: "above"}
	switch {
	case now*then < 0:
		return fmt.Sprintf("take out the spacers and fit %d of %s so that the outer ball stands %s its original place",
			abs(then), f.say(step), where[then < 0])
	case abs(then) > abs(now):
		return fmt.Sprintf("fit %d more spacers of %s, %d in all, the outer ball %s its original place",
			abs(then-now), f.say(step), abs(then), where[then < 0])
	}
	return fmt.Sprintf("take out %d spacers of %s, %d remain", abs(then-now), f.say(step), abs(then))
}

func abs(n int) int {
	if n < 0 {
		return -n
	}
	return n
}

// toeWords says a toe angle in degrees and, where readings state a base, as the
// gauge of the first of them reads it.
func (f *fitter) toeWords(deg Number) string {
	if len(f.problem.Sets) == 0 {
		return f.sayToe(float64(deg))
	}
	s := &f.problem.Sets[0]
	mm := s.Gauge.Reading(solver.Deg(float64(deg)), s.Base)
	return fmt.Sprintf("%s on the gauge (%s)", f.say(f.length(mm)), f.sayToe(float64(deg)))
}

// measurementWords says what to measure.
func (f *fitter) measurementWords(m *optimize.Measurement) string {
	if m.Unknown >= 0 {
		return fmt.Sprintf("measure %s again, to half a millimetre", f.key(&f.car.Unknowns[m.Unknown]))
	}
	var travels []string
	for _, t := range m.Travels {
		travels = append(travels, f.sayTravel(f.length(t)))
	}
	with := "the parts as stated"
	if len(m.Changes) > 0 {
		var parts []string
		for i := range m.Changes {
			c := &m.Changes[i]
			label, value := f.sayValue(c.Key(), f.doc.FromSolver(c.Parameter, c.Value))
			parts = append(parts, label+" "+value)
		}
		with = strings.Join(parts, ", ")
	}
	how := ""
	switch {
	case m.Turned:
		how = ", the gauge turned round, front to rear (\"turned\")"
	case m.Base > 0:
		how = ", on a base of " + f.say(f.length(m.Base))
	}
	return fmt.Sprintf("take readings on the %s side with %s at travel %s%s", m.Side, with, strings.Join(travels, ", "), how)
}

// verifyWords says whether the readings after fitting pass.
func (f *fitter) verifyWords(v *VerifyResult) []string {
	if v == nil {
		return nil
	}
	if v.Passed {
		return []string{"the readings after fitting lie where they should: passed"}
	}
	var lines []string
	for _, s := range v.Sets {
		if s.Passed {
			continue
		}
		lines = append(lines, fmt.Sprintf("the readings after fitting do not lie where they should: set %d (%s) at travel %s is %s off, where %s would be usual",
			s.Set+1, s.Side, f.sayTravel(s.Travels[s.Worst]), f.say(s.Off[s.Worst]), f.say(s.SD[s.Worst])))
	}
	if len(v.Causes) > 0 {
		c := v.Causes[0]
		label, off := f.sayValue(c.Parameter, c.Value)
		lines = append(lines, fmt.Sprintf("most likely single cause: %s is %s off; measure it again", label, off))
	}
	return lines
}
