package main

import (
	"toewright/internal/engine"
	"toewright/solver"
)

// showSearch prints the best values, their figures and how sure they are.
func showSearch(r *report, s *engine.SearchResult) {
	r.line("%s; judged by the %s of the %s", windowLine(r, s.Window), s.Minimise, sides[s.Side])
	r.heading("best values")
	t := &table{left: map[int]bool{3: true}}
	for _, v := range r.study.Search.Variables {
		value, unit := r.parameter(v.Parameter, s.Best.Values[v.Parameter])
		t.add(v.Parameter, value, unit, boundNote(s, v.Parameter))
	}
	r.table(t)
	r.heading("toe change less target")
	r.table(searchFigures(r, s))
	r.line("")
	r.line("%d of %d searches ended here, after %d evaluations; %s.", s.Agreeing, s.Restarts, s.Evaluations, s.Status)
	if len(s.AtBound) > 0 {
		r.line("A value at a bound may have a better one beyond it.")
	}
}

var sides = map[string]string{"left": "left wheel", "right": "right wheel", "both": "two wheels"}

func boundNote(s *engine.SearchResult, parameter string) string {
	for _, b := range s.AtBound {
		if b.Parameter == parameter {
			return "at its " + b.Bound
		}
	}
	return ""
}

// searchFigures has a row for the start, the best and each scenario.
func searchFigures(r *report, s *engine.SearchResult) *table {
	t := &table{}
	t.add("", "rms "+r.toeUnit(), "largest "+r.toeUnit())
	row := func(label string, f engine.ToeFigures) {
		t.add(label, r.toe(float64(f.RMS)), r.toe(float64(f.Peak)))
	}
	row("as it stands", s.Start)
	row("best", s.Best.ToeFigures)
	for _, c := range s.Scenarios {
		row("  "+oneLine(c.Name), c.ToeFigures)
	}
	return t
}

// parameter formats the value of a parameter and its unit.
func (r *report) parameter(key string, value float64) (text, unit string) {
	design, err := r.study.Design()
	if err != nil {
		return fixed(value, 3), ""
	}
	p, _, err := solver.FindParameter(design, key)
	if err == nil && p.Quantity == solver.AngleQuantity {
		return fixed(value, 4), "deg"
	}
	return r.length(value), string(r.shown)
}
