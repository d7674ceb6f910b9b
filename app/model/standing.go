package model

import (
	"context"
	"fmt"
	"math"
	"strings"

	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/solver"
)

// standings are how cars stand to the limits of a search. Those of a car that has not
// changed are not taken again.
type standings struct {
	search *study.Search
	design *solver.Design
	byCar  map[engine.Solution][]Standing
}

// Standing is how a car stands to one limit.
type Standing struct {
	Label string
	Text  string // "14.2 deg, at most 18 wanted: 3.8 to spare"
	Held  bool
	// Value is what the car has, with no unit and "" where there is none; Where says at
	// which travel and lock, where that matters.
	Value, Where string
	// Spare is how far the value is from its nearest bound: beyond it, below 0. It is ""
	// where there is no value.
	Spare string
	// Ease is Spare in parts of the difference that matters of such a value, by which
	// limits of different units are compared; infinite where there is no value.
	Ease float64
	// Lacks says why the limit can be measured on no car, by the key of what the study
	// lacks and where the page states it; empty where it can.
	Lacks string
}

// Class returns "broken" of a limit that is not held, else "".
func (k *Standing) Class() string {
	if k.Held || k.Text == "" {
		return ""
	}
	return "broken"
}

// Standing returns how a car stands to each limit of the search, in that of the set-ups
// in which it has least room: none
// where there are none. One that cannot be measured says so by itself.
func (d *Desk) Standing(car *Car) ([]Standing, error) {
	doc, cars := d.Session.Document(), d.Session.Cars()
	if doc.Search == nil || len(doc.Search.Limits) == 0 || car.Err != nil {
		return nil, nil
	}
	if d.standings.search != doc.Search || d.standings.design != cars.Design {
		d.standings = standings{doc.Search, cars.Design, map[engine.Solution][]Standing{}}
	}
	if list, ok := d.standings.byCar[car.Solution()]; ok {
		return list, nil
	}
	list, err := standingOf(doc, car)
	if err == nil {
		d.standings.byCar[car.Solution()] = list
	}
	return list, err
}

func standingOf(doc *study.Document, car *Car) ([]Standing, error) {
	r, err := engine.Standing(context.Background(), doc, engine.StandingOptions{Candidate: car.Name})
	if err != nil {
		return nil, err
	}
	var list []Standing
	for i := range r.Limits {
		l := &r.Limits[i]
		label, _ := LimitLabel(doc, &doc.Search.Limits[i])
		k := Standing{Label: label, Text: standingText(NumbersOf(doc), doc, l), Held: l.Held, Lacks: lacks(l), Ease: math.Inf(-1)}
		k.measure(doc, &doc.Search.Limits[i], l)
		list = append(list, k)
	}
	return list, nil
}

// measure sets the numbers of a standing, where there are any.
func (k *Standing) measure(doc *study.Document, limit *study.Limit, l *engine.LimitResult) {
	n := NumbersOf(doc)
	k.Where = whereText(n, doc, l)
	if !l.Value.Valid() {
		return
	}
	k.Value = n.Amount(float64(l.Value), l.Unit, doc.Units)
	if room := l.Room(); !math.IsInf(room, 0) {
		k.Spare, k.Ease = n.Amount(room, l.Unit, doc.Units), room
	}
	if kind, ok := study.KindOfLimit(limit.Result); ok {
		if k.Ease /= kind.Scale; kind.Unit == study.LimitLength {
			k.Ease = doc.Units.Millimetres(k.Ease)
		}
	}
}

// LeastToSpare says how a car stands to the limit of a study that it has least to spare of,
// by the results of all; "" where there are none.
func LeastToSpare(doc *study.Document, list []engine.LimitResult) string {
	var least *Standing
	for i := range list {
		k := &Standing{Held: list[i].Held, Ease: math.Inf(-1)}
		k.measure(doc, &doc.Search.Limits[i%len(doc.Search.Limits)], &list[i])
		if least == nil || k.Ease < least.Ease {
			least = k
		}
	}
	if least == nil {
		return ""
	}
	return least.SpareText()
}

// SpareText is what is to spare, with the sign of how the limit stands.
func (k *Standing) SpareText() string {
	switch {
	case k.Spare == "":
		return ""
	case k.Held:
		return "✓ " + k.Spare
	}
	return "✗ " + k.Spare
}

// whereText says where and in which set-up a limit is nearest to being broken, "" where
// that does not matter.
func whereText(n Numbers, doc *study.Document, l *engine.LimitResult) string {
	where := l.Where(func(x float64) string { return n.Travel(doc.Units.Millimetres(x)) })
	switch {
	case l.Scenario == "":
		return where
	case where == "":
		return "in " + l.Scenario
	}
	return where + ", in " + l.Scenario
}

// standingText says a value, what is wanted of it, and how far it is from that.
func standingText(n Numbers, doc *study.Document, l *engine.LimitResult) string {
	where := whereText(n, doc, l)
	switch {
	case l.Unmeasured():
		return "cannot be measured"
	case !l.Value.Valid() && where != "":
		return "broken: " + where
	case !l.Value.Valid():
		return "cannot be measured on this car"
	case where != "":
		where = " " + where
	}
	room := l.Room()
	figure := func(x float64) string { return n.Amount(x, l.Unit, doc.Units) }
	verdict := figure(math.Abs(room)) + " to spare"
	if !l.Held {
		verdict = "broken by " + figure(math.Abs(room))
	}
	return fmt.Sprintf("%s%s, %s: %s", n.AmountText(float64(l.Value), l.Unit, doc.Units), where, wantedIn(l, figure), verdict)
}

// lacks says what keeps a limit from being measured and, where the page has a field for
// it, in which panel.
func lacks(l *engine.LimitResult) string {
	if !l.Unmeasured() {
		return ""
	}
	text := strings.Replace(l.Problem, ": is missing", " is missing", 1)
	for key, place := range map[string]string{"tieRod.": "Car, Tie rod", "vehicle.": "Car"} {
		if strings.HasPrefix(text, key) {
			return study.Spoken(text) + "; state it in " + place
		}
	}
	return study.Spoken(text)
}
