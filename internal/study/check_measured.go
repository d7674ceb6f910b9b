package study

import (
	"fmt"
	"math"
)

// Bounds of what is measured on an axle, mm: far beyond what tapes are stretched over
// there (common practice).
const (
	longestTaped  = 6000
	shortestTaped = 5
	coarsestTape  = 25 // one standard deviation
)

// checkMeasured looks for slips in what was taped: lengths that no axle has, inches among
// millimetres, one measure twice and marks on top of each other. Whether measures agree is
// for a location to say.
func checkMeasured(d *Document) []Finding {
	var found []Finding
	seen := map[string]string{}
	for _, m := range d.Measures() {
		path := m.Path()
		mm, sd := d.Units.Millimetres(m.Value), d.Units.Millimetres(m.SD)
		switch {
		case math.Abs(mm) > longestTaped:
			found = append(found, Finding{path + ".value", Warning, fmt.Sprintf("%g %s is more than an axle has", m.Value, d.Units), "it is in the file's units; read it again"})
		case m.Axis() < 0 && mm < shortestTaped:
			found = append(found, Finding{path + ".value", Warning, fmt.Sprintf("%g %s is too short to be taped", m.Value, d.Units), "it is in the file's units; read it again"})
		case sd > coarsestTape:
			found = append(found, Finding{path + ".sd", Warning, fmt.Sprintf("%g %s is not a tape's", m.SD, d.Units), "it is one standard deviation, in the file's units"})
		}
		key := m.List + ": " + min(m.From, m.To) + ", " + max(m.From, m.To)
		if first, ok := seen[key]; ok {
			found = append(found, Finding{path, Note, "measures the same as " + first, "both count, as two readings of one length"})
		}
		seen[key] = path
	}
	return append(found, d.checkMarks()...)
}

// checkMarks looks for two marks in one place.
func (d *Document) checkMarks() []Finding {
	if d.Measured == nil {
		return nil
	}
	names := sortedNames(d.Measured.Marks)
	for i, a := range names {
		for _, b := range names[:i] {
			if d.Measured.Marks[a] == d.Measured.Marks[b] {
				return []Finding{{"measured.marks." + a, Warning, fmt.Sprintf("stands where mark %s does", b), "correct one of them"}}
			}
		}
	}
	return nil
}
