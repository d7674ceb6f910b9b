package model

import (
	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
)

// Aims are what toe change can be traded off against.
var Aims = []struct{ Key, Label, Meaning string }{
	{"stock", "distance from stock", "how far the parts that are free stand from those of the base car, all together"},
	{"ackermann", "Ackermann error", "how far the Ackermann percentage is from the one asked for, in points"},
	{"ratio", "ratio change", "by how much the steering about straight ahead becomes quicker or slower than that of the base car"},
}

// AimLabel names an aim of a trade-off.
func AimLabel(key string) string {
	for _, a := range Aims {
		if a.Key == key {
			return a.Label
		}
	}
	return key
}

// AimText writes the value of an aim, which comes in the study's length unit or in
// percent, with its unit.
func (n Numbers) AimText(d *study.Document, r *engine.TradeOffResult, value float64) string {
	return n.AmountText(value, r.AimUnit, d.Units)
}

// AimValue returns an aim in the unit that it is shown in.
func (n Numbers) AimValue(d *study.Document, r *engine.TradeOffResult, value float64) float64 {
	if r.AimUnit == "%" {
		return value
	}
	return d.Units.Convert(value, n.Units)
}

// Trade makes a design of a trade-off a candidate and selects it.
func (d *Desk) Trade(r *engine.TradeOffResult, p *engine.TradeOffPoint) error {
	n, doc := NumbersOf(d.Session.Document()), d.Session.Document()
	name := AimLabel(r.Aim) + " " + n.AimText(doc, r, float64(p.Aim)) + aimGoal(r)
	i, err := d.Session.AddCandidate(study.Candidate{Name: name, Changes: p.Values})
	if err == nil {
		d.Select(i)
	}
	return err
}

// aimGoal says what an aim was counted from, where the aim's label does not.
func aimGoal(r *engine.TradeOffResult) string {
	if r.Aim != "ackermann" {
		return ""
	}
	return " from " + number.Percent(float64(r.Goal.Value)) + " %"
}
