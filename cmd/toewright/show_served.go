package main

import (
	"math"

	"toewright/internal/engine"
	"toewright/internal/number"
)

// decides marks the set-up that is served worst.
const decides = "decides"

// showServed prints how each car serves the set-ups of the study's search and
// stands to its limits.
func showServed(r *report, c *engine.CompareResult) {
	if len(c.Served) == 0 {
		return
	}
	if len(c.Served[0].Scenarios) > 0 {
		minimise := "rms"
		if r.study.Search.Minimise != "" {
			minimise = r.study.Search.Minimise
		}
		r.heading("%s of toe change less target in each set-up, * where a car is served worst", minimise)
		r.table(servedScores(r, c.Served))
	}
	if len(r.study.Search.Limits) > 0 {
		r.heading("limits: the value nearest to breaking in any set-up, ! where one is broken")
		r.table(servedLimits(r, c.Served))
		limitNotes(r, c.Served)
	}
	for _, s := range c.Served {
		for _, p := range s.Scenarios {
			if p.Problem != "" {
				r.line("%s in set-up %s: %s.", oneLine(s.Candidate), oneLine(p.Name), p.Problem)
			}
		}
	}
}

// servedHead is the head of a table with a column for each car.
func servedHead(list []engine.Served) []string {
	head := []string{"", ""}
	for _, s := range list {
		head = append(head, oneLine(s.Candidate))
	}
	return head
}

// servedScores has a row for each set-up and one for all.
func servedScores(r *report, list []engine.Served) *table {
	t := &table{}
	t.add(servedHead(list)...)
	for i, up := range list[0].Scenarios {
		row := []string{oneLine(up.Name), r.ToeMark()}
		for _, s := range list {
			cell := r.toe(float64(s.Scenarios[i].Score))
			if s.Scenarios[i].Binds {
				cell = "* " + cell
			}
			row = append(row, cell)
		}
		t.add(row...)
	}
	row := []string{"all together", r.ToeMark()}
	for _, s := range list {
		row = append(row, r.toe(float64(s.Score)))
	}
	t.add(row...)
	row = []string{"largest error of any", r.ToeMark()}
	for i := range list {
		peak := math.NaN()
		if worst := list[i].Worst(); worst != nil {
			peak = float64(worst.Peak)
		}
		row = append(row, r.toe(peak))
	}
	t.add(row...)
	return t
}

// servedLimits has a row for each limit.
func servedLimits(r *report, list []engine.Served) *table {
	t := &table{}
	t.add(servedHead(list)...)
	n := len(r.study.Search.Limits)
	tightest := tightestOf(list, n)
	for k := range n {
		row := []string{"", ""}
		for i := range list {
			l := tightest[i][k]
			if l == nil {
				row = append(row, fixed(math.NaN(), 0))
				continue
			}
			row[0], row[1] = l.Name+" "+bounds(r, l), r.limitUnit(l)
			cell := r.limit(l, l.Value)
			if !l.Held && !l.Unmeasured() {
				cell = "! " + cell
			}
			row = append(row, cell)
		}
		t.add(row...)
	}
	return t
}

// tightestOf returns of each car where it is nearest to breaking each of n limits.
func tightestOf(list []engine.Served, n int) (out [][]*engine.LimitResult) {
	for i := range list {
		out = append(out, engine.Tightest(list[i].Limits, n))
	}
	return out
}

// limitNotes says where limits at lock are broken, and which limits cannot be measured:
// those once, since it is for what the study lacks.
func limitNotes(r *report, list []engine.Served) {
	n := len(r.study.Search.Limits)
	told := make([]bool, n)
	for i, of := range tightestOf(list, n) {
		for k, l := range of {
			switch {
			case l == nil || l.Held:
			case l.At != nil:
				r.line("%s breaks %s: %s.", oneLine(list[i].Candidate), l.Name, r.limitWhere(l))
			case l.Unmeasured() && !told[k]:
				told[k] = true
				r.line("%s cannot be measured: %s.", l.Name, l.Problem)
			}
		}
	}
}

// limitWhere says where a limit at lock is nearest to being broken.
func (r *report) limitWhere(l *engine.LimitResult) string {
	return l.Where(func(x float64) string { return r.travel(x) + " " + r.LengthUnit() })
}

// bounds says what a limit allows.
func bounds(r *report, l *engine.LimitResult) string {
	low, high := r.limit(l, l.Min), r.limit(l, l.Max)
	switch {
	case !l.Min.Valid() && !l.Max.Valid():
		return "within no bound"
	case !l.Max.Valid():
		return "at least " + low
	case !l.Min.Valid():
		return "at most " + high
	}
	return low + " to " + high
}

// limit formats a value or a bound of a limit.
func (r *report) limit(l *engine.LimitResult, x engine.Number) string {
	return number.Plain(r.Amount(float64(x), l.Unit, r.file))
}

// limitUnit returns the unit of what limit returns.
func (r *report) limitUnit(l *engine.LimitResult) string { return r.AmountUnit(l.Unit) }
