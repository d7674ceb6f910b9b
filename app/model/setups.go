package model

import (
	"context"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// setUps are how cars serve the set-ups of a search. Those of a car that has not changed
// are not taken again.
type setUps struct {
	search *study.Search
	byCar  map[engine.Solution]servedSetUps
}

// servedSetUps are how one car serves them.
type servedSetUps struct {
	list []engine.ScenarioResult
	err  error
}

// keptSetUps is the most cars whose set-ups are kept: twice as many as a study has.
const keptSetUps = 16

// SetUps returns how the selected car serves each set-up of the search, as SetUpsOf.
func (d *Desk) SetUps() ([]engine.ScenarioResult, error) { return d.SetUpsOf(d.Selected()) }

// SetUpsOf returns how a car serves each set-up of the search, in the order of the study;
// none where there are none, where the car cannot be solved, and while a hand moves one.
// It is an error where a set-up cannot be read.
func (d *Desk) SetUpsOf(car *Car) ([]engine.ScenarioResult, error) {
	doc := d.Session.Document()
	if d.Moving || doc.Search == nil || len(doc.Search.Scenarios) == 0 || car == nil || car.Err != nil {
		return nil, nil
	}
	if k := &d.setUps; k.search != doc.Search || len(k.byCar) >= keptSetUps {
		*k = setUps{search: doc.Search, byCar: map[engine.Solution]servedSetUps{}}
	}
	served, ok := d.setUps.byCar[car.Solution()]
	if !ok {
		r, err := engine.SetUps(context.Background(), doc, engine.SetUpsOptions{Candidate: car.Name})
		if served.err = err; err == nil {
			served.list = r.Scenarios
		}
		d.setUps.byCar[car.Solution()] = served
	}
	return served.list, served.err
}

// SetUpRow is what a set-up comes to with the reference and with the selected car.
type SetUpRow struct {
	Before, Now string // peaks, with no unit; "" where not known
	Decides     bool   // with the selected car
	Problem     string // why the selected car cannot serve it
}

// SetUpRows returns a row for each set-up of the search, in the order of the study. It is
// an error where a set-up cannot be read.
func (d *Desk) SetUpRows() ([]SetUpRow, error) {
	doc := d.Session.Document()
	if doc.Search == nil {
		return nil, nil
	}
	rows := make([]SetUpRow, len(doc.Search.Scenarios))
	now, err := d.SetUps()
	if err != nil {
		return rows, err
	}
	before, _ := d.SetUpsOf(d.Session.Cars().At(d.View.Yardstick))
	peak := func(list []engine.ScenarioResult, i int) string {
		if i >= len(list) || !list[i].Peak.Valid() {
			return ""
		}
		return NumbersOf(doc).ToeNumber(degreesOf(list[i].Peak))
	}
	for i := range rows {
		rows[i] = SetUpRow{Before: peak(before, i), Now: peak(now, i)}
		if i < len(now) {
			rows[i].Decides = now[i].Binds && len(now) > 1
			rows[i].Problem = now[i].Problem
		}
	}
	return rows, nil
}
