package model

import (
	"context"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// setUps are how the selected car serves the set-ups of a search: kept until the car or
// the search changes.
type setUps struct {
	search *study.Search
	car    engine.Solution
	list   []engine.ScenarioResult
	err    error
}

// SetUps returns how the selected car serves each set-up of the search, in the order of
// the study; none where there are none, where the car cannot be solved, and while a hand
// moves it. It is an error where a set-up cannot be read.
func (d *Desk) SetUps() ([]engine.ScenarioResult, error) {
	doc, car := d.Session.Document(), d.Selected()
	if d.Moving || doc.Search == nil || len(doc.Search.Scenarios) == 0 || car == nil || car.Err != nil {
		return nil, nil
	}
	if k := &d.setUps; k.search != doc.Search || k.car != car.Solution() {
		*k = setUps{search: doc.Search, car: car.Solution()}
		r, err := engine.SetUps(context.Background(), doc, engine.SetUpsOptions{Candidate: car.Name})
		if k.err = err; err == nil {
			k.list = r.Scenarios
		}
	}
	return d.setUps.list, d.setUps.err
}

// SetUpText says how well set-up i of the search is served by the selected car; "" where
// that is not known.
func (d *Desk) SetUpText(i int) string {
	list, err := d.SetUps()
	if err != nil || i >= len(list) {
		return ""
	}
	s := &list[i]
	if s.Problem != "" {
		return "The selected car cannot serve it: " + study.Spoken(s.Problem) + "."
	}
	text := "Peak " + NumbersOf(d.Session.Document()).ToeText(degreesOf(s.Peak)) + " with the selected car"
	if s.Binds {
		return text + "; this one decides."
	}
	return text + "."
}
