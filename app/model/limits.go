package model

import (
	"fmt"
	"slices"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// LimitKind is a result that a search can be kept within, for a list to choose
// from. Clearances need more than two numbers; they come from the study file.
type LimitKind struct {
	Result, Label string
	Length        bool // in the file's length unit; others are as Unit says
	Unit          string
}

// LimitKinds are the results that can be limited by a lower and an upper number.
var LimitKinds = []LimitKind{
	{"outerBallAngle", "Outer ball, angle off neutral", false, "deg"},
	{"innerBallAngle", "Inner ball, angle off neutral", false, "deg"},
	{"threadEngagement", "Thread engaged in the adjuster", true, ""},
	{"tieRodLength", "Tie rod length", true, ""},
	{"steeringArmLength", "Steering arm length", true, ""},
	{"steeringArmOffset", "Steering arm offset", true, ""},
	{"steeringRatio", "Steering ratio", false, ""},
	{"turningCircle", "Turning circle", true, ""},
	{"ackermann", "Ackermann percentage", false, "%"},
	{"toeOutOnTurns", "Toe-out on turns at 20 degrees", false, "deg"},
}

// LimitLabel names a limit for people, and its unit in the study.
func LimitLabel(d *study.Document, l *study.Limit) (label, unit string) {
	if l.Result == study.Clearance {
		return "Clearance of the " + l.Of, string(d.Units)
	}
	i := slices.IndexFunc(LimitKinds, func(k LimitKind) bool { return k.Result == l.Result })
	if i < 0 {
		return l.Result, ""
	}
	k := LimitKinds[i]
	if k.Length {
		return k.Label, string(d.Units)
	}
	return k.Label, k.Unit
}

// SetLimits replaces the limits of the study's search.
func (s *Session) SetLimits(label string, limits []study.Limit) error {
	return s.EditSearch(label, "", func(f *study.Search) { f.Limits = limits })
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
		if l.Held {
			continue
		}
		label, _ := LimitLabel(j.doc, &j.doc.Search.Limits[i%len(j.doc.Search.Limits)])
		list = append(list, Remark{fmt.Sprintf("%s is broken: %.4g %s, %s.", label, float64(l.Value), l.Unit, wanted(l)), true})
	}
	if len(list) == 0 {
		return []Remark{{Text: "All limits are held."}}
	}
	return append(list, Remark{"No values within the bounds hold all limits: those broken are in each other's way.", true})
}

// wanted says the bounds of a limit.
func wanted(l *engine.LimitResult) string {
	switch {
	case !l.Min.Valid():
		return fmt.Sprintf("at most %.4g wanted", float64(l.Max))
	case !l.Max.Valid():
		return fmt.Sprintf("at least %.4g wanted", float64(l.Min))
	}
	return fmt.Sprintf("%.4g to %.4g wanted", float64(l.Min), float64(l.Max))
}

// grids says what the values are on the shop's grids and what that costs.
func (j judge) grids() []Remark {
	r := j.r.Rounded
	if r == nil {
		return nil
	}
	text := fmt.Sprintf("On the steps stated: %s; that costs %s.", j.inWords(r.Values), j.n.ToeText(degreesOf(r.Cost)))
	if !r.Held {
		text += " No point of that grid nearby holds all limits."
	}
	return []Remark{{text, !r.Held}}
}

// most says what serving most cars brings.
func (j judge) most() []Remark {
	r := j.r.Robust
	if r == nil {
		return nil
	}
	return []Remark{{Text: fmt.Sprintf("%.0f %% of the cars made stay within %s; with the values best for a car as drawn it would be %s.",
		r.Percentile, j.n.ToeText(degreesOf(r.Figure)), j.n.ToeText(degreesOf(r.Nominal)))}}
}
