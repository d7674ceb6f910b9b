package model

import (
	"fmt"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// LimitKinds are the results of a car that can be limited by a lower and an upper number,
// for a list to choose from. Clearances, which need more than two numbers, are [Obstacles].
func LimitKinds(d *study.Document) (list []study.LimitKind) {
	for _, k := range study.LimitKinds {
		if k.Key != study.Clearance && d.Has(&k) {
			list = append(list, k)
		}
	}
	return list
}

// LimitLabel names a limit for people, and its unit in the study.
func LimitLabel(d *study.Document, l *study.Limit) (label, unit string) {
	label, unit = resultLabel(d, l)
	if l.At == study.AtLock {
		label += ", also at lock"
	}
	return label, unit
}

func resultLabel(d *study.Document, l *study.Limit) (label, unit string) {
	k, ok := study.KindOfLimit(l.Result)
	switch {
	case !ok:
		return string(l.Result), ""
	case l.Result == study.Clearance:
		return clearanceLabel(l), k.Unit.Symbol(d)
	}
	return k.Label, k.Unit.Symbol(d)
}

// SetLimits replaces the limits of the study's search.
func (s *Session) SetLimits(label string, limits []study.Limit) error {
	return s.EditSearch(label, "", func(f *study.Search) { f.Limits = limits })
}

// SetLimit changes one limit of the study's search.
func (s *Session) SetLimit(label string, i int, change func(*study.Limit)) error {
	return s.EditSearch(label, "", func(f *study.Search) { change(&f.Limits[i]) })
}

// limits says how the answer stands to the limits: those that are broken, or that
// all are held.
func (j judge) limits() []Remark {
	if len(j.r.Limits) == 0 {
		return nil
	}
	var list []Remark
	for i := range j.r.Limits {
		l := &j.r.Limits[i]
		label, _ := LimitLabel(j.doc, &j.doc.Search.Limits[i%len(j.doc.Search.Limits)])
		if l.Scenario != "" {
			label += fmt.Sprintf(" in set-up %q", l.Scenario)
		}
		if !l.Held {
			list = append(list, Remark{label + " is broken: " + standingText(j.n, j.doc, l) + ".", true})
		}
	}
	if len(list) == 0 {
		return []Remark{{Text: "All limits are held."}}
	}
	if j.r.Infeasible == nil {
		return list
	}
	for _, k := range CannotOf(j.doc, j.cars, j.r.Infeasible) {
		list = append(list, Remark{k.Text, true})
	}
	return append(list, Remark{"Ease a limit, widen the bounds or free another parameter.", true})
}

// wantedIn says the bounds of a limit, with numbers as number writes them.
func wantedIn(l *engine.LimitResult, figure func(float64) string) string {
	switch {
	case !l.Min.Valid():
		return "at most " + figure(float64(l.Max)) + " wanted"
	case !l.Max.Valid():
		return "at least " + figure(float64(l.Min)) + " wanted"
	}
	return figure(float64(l.Min)) + " to " + figure(float64(l.Max)) + " wanted"
}

// grids says what the values are on the shop's grids and what that costs.
func (j judge) grids() []Remark {
	r := j.r.Rounded
	if r == nil {
		return nil
	}
	text := fmt.Sprintf("On the steps and sizes stated, as the car has them: %s; that costs %s against %s.",
		j.inWords(r.Values), j.n.ToeText(degreesOf(r.Cost)), j.inWords(j.r.Best.Values))
	if !r.Held {
		text += " No value of them nearby holds all limits."
	}
	return []Remark{{text, !r.Held}}
}

// most says what serving most cars brings.
func (j judge) most() []Remark {
	r := j.r.Robust
	if r == nil {
		return nil
	}
	if !r.Figure.Valid() {
		return []Remark{{fmt.Sprintf("Fewer than %.0f %% of the cars made can be built and reach the window.", r.Percentile), true}}
	}
	return []Remark{{Text: fmt.Sprintf("%.0f %% of the cars made stay within %s; with the values best for a car as drawn it would be %s.",
		r.Percentile, j.n.ToeText(degreesOf(r.Figure)), j.n.ToeText(degreesOf(r.Nominal)))}}
}
