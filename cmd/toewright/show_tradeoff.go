package main

import (
	"fmt"

	"toewright/internal/engine"
	"toewright/internal/number"
)

// showTradeOff prints a row for each design.
func showTradeOff(r *report, f *engine.TradeOffResult) {
	r.line("Toe change by the %s of the %s, against %s.", f.Minimise, sides[f.Side], aimSaid(f))
	if f.Stopped {
		r.line("Stopped before all designs were found.")
	}
	r.line("")
	t := &table{}
	header := []string{"rms " + r.ToeMark(), "largest " + r.ToeMark(), f.Aim + " " + r.AmountUnit(f.AimUnit)}
	var loads []engine.LoadPeak
	if len(f.Designs) > 0 {
		loads = f.Designs[0].Loads
	}
	header = append(header, peakHeads(r, loads)...)
	for _, v := range r.study.Search.Variables {
		header = append(header, v.Parameter)
	}
	t.add(header...)
	for _, d := range f.Designs {
		row := []string{r.toe(float64(d.RMS)), r.toe(float64(d.Peak)), number.Plain(r.Amount(float64(d.Aim), f.AimUnit, r.file))}
		row = append(row, peakCells(r, d.Loads, len(loads))...)
		for _, v := range r.study.Search.Variables {
			value, unit := r.parameter(v.Parameter, d.Values[v.Parameter])
			row = append(row, value+" "+unit)
		}
		t.add(row...)
	}
	r.table(t)
	if len(f.Designs) == 1 {
		r.line("")
		r.line("The car of the least toe change has the least of the aim too that the variables come to.")
	}
}

// aimSaid says what an aim is and from what it is counted.
func aimSaid(f *engine.TradeOffResult) string {
	switch f.Aim {
	case "ackermann":
		return fmt.Sprintf("how far the Ackermann percentage is from %s %%", fixed(float64(f.Goal.Value), 0))
	case "ratio":
		of := "the base car's"
		if f.Goal.Value.Valid() {
			of += " of " + fixed(float64(f.Goal.Value), 2)
		}
		return "how far the steering ratio is from " + of + ", in percent of it"
	}
	return "the distance of all parts from the base car's"
}
