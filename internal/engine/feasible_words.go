package engine

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"toewright/internal/study"
)

// Phrasing is how a door writes what stands in a sentence.
type Phrasing struct {
	Length func(float64) string              // of the file, with its unit
	Limit  func(*LimitResult) string         // its name
	Figure func(*LimitResult, Number) string // a value of what it limits, with its unit
	Values func(study.Changes) string        // changes in one line
}

// Words says in sentences what cannot be had, and what is nearest; none where all can.
func (r *FeasibleResult) Words(say Phrasing) (out []string) {
	if n := r.Reach; n != nil {
		out = append(out, n.words(say))
	}
	for i := range r.Conflicts {
		out = append(out, r.Conflicts[i].words(say))
	}
	return out
}

func (n *NearestReach) words(say Phrasing) string {
	where := ""
	if n.Scenario != "" {
		where = fmt.Sprintf(" in set-up %q", n.Scenario)
	}
	if n.Values == nil {
		return fmt.Sprintf("No values found within the bounds let the car stand%s: %s.", where, n.Problem)
	}
	return fmt.Sprintf("No values found within the bounds reach the window. The nearest, %s, reach %s of bump and %s of droop%s, where %s ends the travel.",
		say.Values(n.Values), say.Length(n.Bump), say.Length(n.Droop), where, n.Link)
}

func (c *LimitConflict) words(say Phrasing) string {
	var wanted, got []string
	for i := range c.Limits {
		l := &c.Limits[i]
		wanted = append(wanted, say.Limit(l)+" "+wantedOf(l, say))
		got = append(got, say.Limit(l)+" "+say.Figure(l, l.Value)+inSetUp(l))
	}
	text := "No values found within the bounds hold " + wanted[0]
	if len(wanted) > 1 {
		text = "No values found within the bounds hold together: " + strings.Join(wanted, "; ")
	}
	if c.Nearest == nil {
		return text + ": " + c.Limits[0].Problem + "."
	}
	return fmt.Sprintf("%s. The nearest is %s, with %s.", text, strings.Join(got, "; "), say.Values(c.Nearest))
}

func inSetUp(l *LimitResult) string {
	if l.Scenario == "" {
		return ""
	}
	return fmt.Sprintf(" in set-up %q", l.Scenario)
}

// wantedOf says the bounds of a limit.
func wantedOf(l *LimitResult, say Phrasing) string {
	switch {
	case !l.Min.Valid():
		return "at most " + say.Figure(l, l.Max)
	case !l.Max.Valid():
		return "at least " + say.Figure(l, l.Min)
	}
	return say.Figure(l, l.Min) + " to " + say.Figure(l, l.Max)
}

// plainly is that of errors: keys, and numbers in the file's units.
func (s *sweeper) plainly() Phrasing {
	return Phrasing{
		Length: func(x float64) string { return fmt.Sprintf("%.4g %s", x, s.doc.Units) },
		Limit:  func(l *LimitResult) string { return l.Name },
		Figure: func(l *LimitResult, x Number) string {
			return strings.TrimSpace(fmt.Sprintf("%.5g %s", float64(x), l.Unit))
		},
		Values: func(c study.Changes) string {
			var list []string
			for _, key := range slices.Sorted(maps.Keys(c)) {
				list = append(list, fmt.Sprintf("%s %.4g", key, c[key]))
			}
			return strings.Join(list, ", ")
		},
	}
}
