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
	// Lacks says why the limit can be measured on no car, by the key of what the study
	// lacks and where the page states it; empty where it can.
	Lacks string
}

// Standing returns how a car stands to each limit of the search, in no scenario: none
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
		list = append(list, Standing{label, standingText(NumbersOf(doc), doc, l), l.Held, lacks(l)})
	}
	return list, nil
}

// standingText says a value, what is wanted of it, and how far it is from that.
func standingText(n Numbers, doc *study.Document, l *engine.LimitResult) string {
	where := l.Where(func(x float64) string { return n.Travel(doc.Units.Millimetres(x)) })
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
