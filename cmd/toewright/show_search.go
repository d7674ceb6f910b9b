package main

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// showSearch prints the best values, their figures and how sure they are.
func showSearch(r *report, s *engine.SearchResult) {
	r.line("%s; judged by the %s of the %s", windowLine(r, s.Window), s.Minimise, sides[s.Side])
	r.heading("best values")
	t := &table{left: map[int]bool{3: true}}
	for _, v := range r.study.Search.Variables {
		value, unit := r.parameter(v.Parameter, s.Best.Values[v.Parameter])
		t.add(v.Parameter, value, unit, boundNote(s, v.Parameter))
	}
	r.table(t)
	r.heading("toe change less target")
	r.table(searchFigures(r, s))
	r.line("")
	r.line("%d of %d searches ended here, after %d evaluations; %s.", s.Agreeing, s.Restarts, s.Evaluations, s.Status)
	showLimits(r, s)
	showRobust(r, s)
	showRounded(r, s)
	for _, note := range []string{s.TargetNote, s.StartNote} {
		if note != "" {
			r.line("Note: %s.", note)
		}
	}
	if len(s.AtBound) > 0 {
		r.line("A value at a bound may have a better one beyond it.")
	}
}

var sides = map[string]string{"left": "left wheel", "right": "right wheel", "both": "worse wheel"}

func boundNote(s *engine.SearchResult, parameter string) string {
	for _, b := range s.AtBound {
		if b.Parameter == parameter {
			return "at its " + b.Bound
		}
	}
	return ""
}

// searchFigures has a row for the start, the best and each scenario.
func searchFigures(r *report, s *engine.SearchResult) *table {
	t := &table{left: map[int]bool{4: true}}
	head := []string{"", "rms " + r.ToeMark(), "largest " + r.ToeMark()}
	if len(s.Scenarios) > 0 {
		head = append(head, "weight")
	}
	t.add(head...)
	row := func(label string, f engine.ToeFigures, more ...string) {
		t.add(append([]string{label, r.toe(float64(f.RMS)), r.toe(float64(f.Peak))}, more...)...)
	}
	if s.Weighted() {
		row("as it stands", s.Start.ToeFigures, "", minimised(r, s.Start.Score))
		row("best", s.Best.ToeFigures, "", minimised(r, s.Best.Score))
	} else {
		row("as it stands", s.Start.ToeFigures)
		row("best", s.Best.ToeFigures)
	}
	for _, c := range s.Scenarios {
		note := ""
		if c.Binds {
			note = decides
		}
		row("  "+oneLine(c.Name), c.ToeFigures, fixed(c.Weight, 2), note)
	}
	return t
}

// minimised says what was made small where that is weighted.
func minimised(r *report, score engine.Number) string {
	return "minimised, weighted: " + r.toe(float64(score))
}

// parameter formats the value of a parameter and its unit.
func (r *report) parameter(key string, value float64) (text, unit string) {
	design, err := r.study.Design()
	if err != nil {
		return fixed(value, 3), ""
	}
	unit = string(r.file)
	if p, _, err := solver.FindParameter(design, key); err == nil && p.Quantity == solver.AngleQuantity {
		unit = "deg"
	}
	return number.Plain(r.Amount(value, unit, r.file)), r.AmountUnit(unit)
}

// showLimits prints how the best values stand to the study's limits, in the set-up
// where each is nearest to being broken.
func showLimits(r *report, s *engine.SearchResult) {
	if len(s.Limits) == 0 {
		return
	}
	r.heading("limits")
	t := &table{left: map[int]bool{5: true, 6: true}}
	t.add("", "value", "min", "max", "", "", "")
	for _, l := range engine.Tightest(s.Limits, len(r.study.Search.Limits)) {
		if l == nil {
			continue
		}
		state := "held"
		if !l.Held {
			state = "broken"
		}
		if l.Scenario != "" {
			state += ", tightest in " + oneLine(l.Scenario)
		}
		if l.At != nil {
			state += "; " + r.limitWhere(l)
		}
		t.add(l.Name, r.limit(l, l.Value), r.limit(l, l.Min), r.limit(l, l.Max), r.limitUnit(l), state)
	}
	r.table(t)
	if s.Infeasible == nil {
		return
	}
	r.line("")
	for _, text := range s.Infeasible.Words(r.phrasing()) {
		r.sentence(text)
	}
}

// phrasing is how sentences write what cannot be had: parameters and limits by their
// keys, numbers as reports do.
func (r *report) phrasing() engine.Phrasing {
	return engine.Phrasing{
		Length: func(x float64) string { return r.travel(x) + " " + r.LengthUnit() },
		Limit:  func(l *engine.LimitResult) string { return l.Name },
		Figure: func(l *engine.LimitResult, x engine.Number) string {
			return strings.TrimSpace(r.limit(l, x) + " " + r.limitUnit(l))
		},
		Values: func(c study.Changes) string {
			var list []string
			for _, key := range slices.Sorted(maps.Keys(c)) {
				text, unit := r.parameter(key, c[key])
				list = append(list, key+" "+text+" "+unit)
			}
			return strings.Join(list, ", ")
		},
	}
}

// showRounded prints the best values that the shop can hold.
func showRounded(r *report, s *engine.SearchResult) {
	if s.Rounded == nil {
		return
	}
	heading := "best values found on the grids stated"
	if s.Rounded.Proved {
		heading = "best values on the grids stated, of all their points"
	}
	r.heading(heading)
	t := &table{}
	for _, v := range r.study.Search.Variables {
		value, unit := r.parameter(v.Parameter, s.Rounded.Values[v.Parameter])
		t.add(v.Parameter, value, unit)
	}
	r.table(t)
	of := s.Minimise
	if s.Robust != nil {
		of = fmt.Sprintf("the figure that %s %% of the cars stay within, now %s", fixed(s.Robust.Percentile, 0), r.toe(float64(s.Rounded.AtPercentile)))
	}
	r.line("Rounding costs %s %s of %s; the car as drawn then has rms %s, largest %s.", r.toe(float64(s.Rounded.Cost)), r.ToeMark(),
		of, r.toe(float64(s.Rounded.RMS)), r.toe(float64(s.Rounded.Peak)))
	if !s.Rounded.Held {
		r.line("No point of the grid nearby holds all limits.")
	}
}

// showRobust prints what serving most cars brings against serving the one drawn.
func showRobust(r *report, s *engine.SearchResult) {
	if s.Robust == nil {
		return
	}
	r.line("")
	r.line("%s %% of the cars made stay within %s %s (95 %% interval %s to %s); %s with the values best for a car as drawn; %s as it stands.",
		fixed(s.Robust.Percentile, 0), r.toe(float64(s.Robust.Figure)), r.ToeMark(), r.toe(float64(s.Robust.Low)), r.toe(float64(s.Robust.High)),
		r.toe(float64(s.Robust.Nominal)), r.toe(float64(s.Robust.Start)))
	if maps.Equal(s.Best.Values, s.Robust.NominalValues) {
		r.line("No values were found that serve more cars than those best for the car as drawn.")
	}
}
