package engine

import (
	"context"
	"math"

	"toewright/internal/study"
)

// FormMeasure is a line of a form: a measure to take, and the standard deviation of toe change
// at the end of the window where that is largest, once it and all before it were taken, degrees.
type FormMeasure struct {
	NextTape
	Narrow bool // which spacer is best is known from here on
}

// TapeFormOptions say how long a form is. The zero value is an hour's, and a page.
type TapeFormOptions struct {
	Measures *int `json:"measures,omitzero"` // at most; nil is [DefaultForm]

	Progress func(Progress) `json:"-"`
}

// DefaultForm is how many measures a form has where nothing else is said.
const DefaultForm = 40

// mostForm is the longest form: more than a car has measures.
const mostForm = 1000

// TapeForm lists measures of a study's car in the order in which each helps most, at most as many
// as asked for, as if each agreed with all before it: a form to fill in beside the car. What was
// measured already comes before, and is not listed.
func TapeForm(ctx context.Context, d *study.Document, o TapeFormOptions) (list []FormMeasure, err error) {
	most, err := counted("measures", o.Measures, DefaultForm, 0, mostForm)
	if err != nil {
		return nil, err
	}
	done := stages(o.Progress).items(most + 1)
	d, one := d.Clone(), 1
	for len(list) <= most {
		if done != nil {
			done(len(list))
		}
		l, err := Locate(ctx, d, LocateOptions{Measure: &one})
		if err != nil {
			return nil, err
		}
		if n := len(list); n > 0 {
			list[n-1].Narrow = l.Spacer != nil && l.Spacer.Narrow
		}
		if len(l.Next) == 0 || len(list) == most {
			break
		}
		next := FormMeasure{NextTape: l.Next[0]}
		list = append(list, next)
		takeAsLocated(d, l, &next.NextTape)
	}
	return list, nil
}

// takeAsLocated adds a measure to a study as the points have it that a location found. Those of
// the file would contradict what was measured where they are a template's.
func takeAsLocated(d *study.Document, l *LocateResult, n *NextTape) {
	place := func(name string) study.Vec3 {
		if p, ok := l.Points[name]; ok {
			return p.Value
		}
		return l.Marks[name].Value
	}
	to, m := place(n.Of), d.Measured
	add := func(list *[]study.Plumbed, axis int) { *list = append(*list, study.Plumbed{Of: n.Of, Value: to[axis]}) }
	switch n.Kind {
	case "height":
		add(&m.Heights, 2)
	case "side":
		add(&m.Sides, 1)
	case "station":
		add(&m.Stations, 0)
	default:
		from := place(n.From)
		m.Lengths = append(m.Lengths, study.Length{From: n.From, To: n.Of, Value: math.Hypot(math.Hypot(to[0]-from[0], to[1]-from[1]), to[2]-from[2])})
	}
}
