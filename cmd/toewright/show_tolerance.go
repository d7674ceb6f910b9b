package main

import (
	"fmt"
	"strings"

	"toewright/internal/engine"
	"toewright/internal/number"
)

const (
	// mostContributors is how many dimensions are listed: the rest together decide
	// little.
	mostContributors = 12
	// leastShare is the share of the variance, half of what is printed as 0.1 %,
	// below which a dimension is not listed.
	leastShare = 0.0005
)

// showTolerance prints the spread along the travel, the figure's percentiles, the
// yield and the dimensions that decide it.
func showTolerance(r *report, t *engine.ToleranceResult) {
	r.line("%s; %s of %s, static toe %s", windowLine(r, t.Window), number.Count(t.Cars, "car"), oneLine(t.Candidate), t.StaticToe)
	if t.StaticToe == engine.ToeAsBuilt {
		r.line("Toe change counts from the drawing's static toe: what a car's own is off by is part of it.")
	}
	if t.Failed > 0 {
		r.line("%s not built, or short of the window.", number.Count(t.Failed, "car"))
	}
	for _, side := range []string{"left", "right"} {
		if rows := toleranceRows(r, t, side); rows != nil {
			r.heading("toe change less target, %s wheel", side)
			r.table(rows)
		}
	}
	r.heading("%s of toe change less target over the cars", t.Figure.Name)
	f := &table{}
	f.add("nominal", "median", "90 %", "95 %", "99 %", "")
	f.add(r.toe(float64(t.Figure.Nominal)), r.toe(float64(t.Figure.Median)), r.toe(float64(t.Figure.Percentile90)),
		r.toe(float64(t.Figure.Percentile95)), r.toe(float64(t.Figure.Percentile99)), r.ToeMark())
	r.table(f)
	if t.Figure.Problem != "" {
		r.line("%s.", t.Figure.Problem)
	}
	showYield(r, t)
	showContributors(r, t)
	showPeaks(r, t.Loads)
	showSetUps(r, t)
	if !t.LinearValid {
		r.line("")
		r.line("Simulation and linear propagation differ by more than a twentieth of the spread: go by the simulation.")
	}
}

func toleranceRows(r *report, t *engine.ToleranceResult, side string) *table {
	out := &table{}
	out.add("travel", "nominal", "linear sd", "2.5 %", "median", "97.5 %")
	u := r.ToeMark()
	out.add(r.LengthUnit(), u, u, u, u, u)
	n := len(out.rows)
	for i := len(t.Positions) - 1; i >= 0; i-- { // bump on top, as the wheel goes
		p := t.Positions[i]
		if p.Side != side {
			continue
		}
		out.add(r.travel(p.Travel), r.toe(float64(p.Nominal)), r.toe(float64(p.SD)),
			r.toe(float64(p.Low)), r.toe(float64(p.Median)), r.toe(float64(p.High)))
	}
	if len(out.rows) == n {
		return nil
	}
	return out
}

func showYield(r *report, t *engine.ToleranceResult) {
	r.line("")
	if t.Yield == nil {
		r.line("No limit is stated: give --limit, or yield in the study, to count the cars that pass.")
		return
	}
	r.line("%s %% of the cars pass the limit of %s %s (95 %% interval %s to %s %%).", percent(t.Yield.Share),
		r.toe(t.Yield.Limit), r.ToeMark(), percent(t.Yield.Low), percent(t.Yield.High))
	if !t.Yield.AsDrawn {
		r.line("The car as drawn does not pass itself: %s %s.", r.toe(float64(t.Figure.Nominal)), r.ToeMark())
	}
}

func percent(x engine.Number) string { return number.Plain(number.Percent(100 * float64(x))) }

func showContributors(r *report, t *engine.ToleranceResult) {
	r.heading("what decides it: share of the variance where it is largest")
	out := &table{}
	header := []string{"dimension", "share %"}
	if t.Yield != nil {
		header = append(header, "yield gained by halving it, points")
	}
	out.add(header...)
	for i, c := range t.Contributors {
		if i == mostContributors || !(c.Share >= leastShare) {
			break
		}
		row := []string{c.Parameter, percent(c.Share)}
		if t.Yield != nil {
			row = append(row, number.Signed(float64(c.Halved), percent(c.Halved)))
		}
		out.add(row...)
	}
	r.table(out)
	if rest := len(t.Contributors) - len(out.rows) + 1; rest > 0 {
		r.line("%d more decide less than these.", rest)
	}
}

// showSetUps prints the series in each set-up of the study's search.
func showSetUps(r *report, t *engine.ToleranceResult) {
	if len(t.Scenarios) == 0 {
		return
	}
	r.heading("%s of toe change less target in each set-up that the search must serve", t.Figure.Name)
	out := &table{left: map[int]bool{5: true, 6: true}}
	out.add("set-up", "weight", "as drawn "+r.ToeMark(), "95 % "+r.ToeMark(), "pass %", "decided by", "")
	for i := range t.Scenarios {
		c := &t.Scenarios[i]
		note := c.Problem
		if c.Binds {
			note = "worst served"
		}
		if c.Failed > 0 {
			note = strings.TrimPrefix(fmt.Sprintf("%s; %d cars fail", note, c.Failed), "; ")
		}
		out.add(oneLine(c.Name), fixed(c.Weight, 2), r.toe(float64(c.Nominal)), r.toe(float64(c.Percentile95)), percent(c.Yield), c.Decides, note)
	}
	r.table(out)
	if t.ScenarioYield.Valid() {
		r.line("")
		r.line("%s %% of all cars pass, where as many are of each set-up as its weight says.", percent(t.ScenarioYield))
	}
}
