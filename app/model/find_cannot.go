package model

import (
	"toewright/internal/engine"
	"toewright/internal/study"
)

// Cannot is something that a search is asked for and no values found can have.
type Cannot struct {
	Text    string
	Nearest study.Changes // that can be had; nil where no car is near at all
}

// CannotOf returns what cannot be had of a study, as the page says it; none where all can.
func CannotOf(doc *study.Document, cars *Cars, r *engine.FeasibleResult) (list []Cannot) {
	for i, text := range r.Words(phrasing(doc, cars)) {
		list = append(list, Cannot{text, nearest(r, i)})
	}
	return list
}

// nearest returns the values of what the i-th sentence of a result says.
func nearest(r *engine.FeasibleResult, i int) study.Changes {
	if r.Reach != nil {
		if i == 0 {
			return r.Reach.Values
		}
		i--
	}
	return r.Conflicts[i].Nearest
}

// phrasing is how the page writes it: limits and parameters by their labels, numbers as
// the study shows them.
func phrasing(doc *study.Document, cars *Cars) engine.Phrasing {
	n := NumbersOf(doc)
	return engine.Phrasing{
		Length: func(x float64) string { return n.Travel(doc.Units.Millimetres(x)) },
		Limit:  func(l *engine.LimitResult) string { return LimitNamed(doc, l.Name) },
		Figure: func(l *engine.LimitResult, x engine.Number) string {
			return n.AmountText(float64(x), l.Unit, doc.Units)
		},
		Values: func(c study.Changes) string { return InWords(doc, cars, c) },
	}
}

// TakeNearest makes the nearest that can be had a candidate and selects it.
func (d *Desk) TakeNearest(k *Cannot) error {
	i, err := d.Session.AddCandidate(study.Candidate{Name: "nearest", Changes: k.Nearest})
	if err == nil {
		d.Select(i)
	}
	return err
}

// LimitNamed names a limit for people by the name that results have for it.
func LimitNamed(doc *study.Document, name string) string {
	for i := range doc.Search.Limits {
		if limit := &doc.Search.Limits[i]; engine.LimitName(limit) == name {
			label, _ := LimitLabel(doc, limit)
			return label
		}
	}
	return name
}
