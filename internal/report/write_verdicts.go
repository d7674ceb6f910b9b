package report

import (
	"fmt"
	"strings"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// verdicts writes why the curve is what it is, within which limits and how surely.
func (p *page) verdicts() {
	p.open("section", "columns")
	p.why()
	p.limits()
	p.yield()
	p.readings()
	p.omitted()
	p.close("section")
}

// points writes a heading and a list below it; nothing for an empty list.
func (p *page) points(heading string, lines []string) {
	if len(lines) == 0 {
		return
	}
	p.open("div", "words")
	p.element("h2", "", heading)
	p.open("ul", "")
	for _, line := range lines {
		p.element("li", "", line)
	}
	p.close("ul")
	p.close("div")
}

// why writes the diagnosis of the car that was, and what is left of its error.
func (p *page) why() {
	was := &p.Cars[0]
	heading := "Why the curve is what it is"
	if p.before() != nil {
		heading = "What was wrong: " + p.carName(was.Name)
	}
	p.points(heading, p.diagnosisOf(was, true))
	if p.before() != nil {
		p.points("What is left: "+p.carName(p.Candidate), p.diagnosisOf(p.after(), false))
	}
}

// diagnosisOf returns the sentences of both sides, or of one where they are alike.
// Remedies are those of the worse side, where all are asked for.
func (p *page) diagnosisOf(c *Car, all bool) []string {
	var lines, others []string
	worse := solver.Left
	if l, r := c.Diagnosis[0], c.Diagnosis[1]; l != nil && r != nil && !p.alike() && r.RMS > l.RMS {
		worse = solver.Right
	}
	for _, side := range p.sides() {
		d := c.Diagnosis[side]
		switch {
		case d == nil || len(d.Words) == 0:
		case side == worse && all:
			lines = append(lines, d.Words...)
		default:
			others = append(others, d.Words[0])
		}
	}
	lines = append(lines, others...)
	if p.alike() {
		for i := range lines {
			lines[i] = strings.TrimPrefix(lines[i], "left side: ")
		}
	}
	return lines
}

// limits writes how the candidate stands to each limit of the search.
func (p *page) limits() {
	var lines []string
	for i := range p.Limits {
		l := &p.Limits[i]
		if l.Unmeasured() {
			lines = append(lines, fmt.Sprintf("%s: cannot be measured: %s", study.Words(l.Name), study.Spoken(l.Problem)))
			continue
		}
		verdict := "held"
		if !l.Held {
			verdict = "NOT HELD"
		}
		name := study.Words(l.Name)
		if l.Scenario != "" {
			name += " in " + l.Scenario
		}
		lines = append(lines, fmt.Sprintf("%s: %s, %s: %s", name, p.measured(l), p.bounds(l), verdict))
	}
	p.points("Limits", lines)
}

// measured writes the value of a limit and, of one at lock, where it is.
func (p *page) measured(l *engine.LimitResult) string {
	where := l.Where(func(x float64) string { return p.n.travel(x) + " " + p.n.LengthUnit() })
	switch {
	case where == "":
		return p.limited(l, l.Value)
	case !l.Value.Valid():
		return where
	}
	return p.limited(l, l.Value) + " " + where
}

// limited writes a value of a limit with its unit.
func (p *page) limited(l *engine.LimitResult, v engine.Number) string {
	return p.n.AmountText(float64(v), l.Unit, p.n.file)
}

func (p *page) bounds(l *engine.LimitResult) string {
	switch {
	case !l.Max.Valid():
		return "at least " + p.limited(l, l.Min)
	case !l.Min.Valid():
		return "at most " + p.limited(l, l.Max)
	}
	return p.limited(l, l.Min) + " to " + p.limited(l, l.Max)
}

// mostContributors bounds the dimensions named as deciding a yield.
const mostContributors = 3

// yield writes what the tolerances come to.
func (p *page) yield() {
	t := p.Tolerance
	if t == nil {
		return
	}
	series := fmt.Sprintf("%s by chance within the study's tolerances, static toe %s", number.Count(t.Cars, "car"), t.StaticToe)
	if t.Failed > 0 {
		series += fmt.Sprintf(", %d of which cannot be built or do not reach the window", t.Failed)
	}
	if y := t.Yield; y != nil {
		series += fmt.Sprintf(": %s stay within %s of %s error (95 %% interval %s to %s)",
			percent(y.Share), p.toeText(y.Limit), figureNames[t.Figure.Name], percent(y.Low), percent(y.High))
	}
	lines := []string{series + ".", p.spread(t), "Deciding: " + p.contributors(t.Contributors) + "."}
	if text := p.peaks(t.Loads); text != "" {
		lines = append(lines, text)
	}
	p.points("Tolerances", lines)
}

// peaks says how the largest loads spread.
func (p *page) peaks(list []engine.LoadPeak) string {
	var out []string
	for i := range list {
		if k := &list[i]; k.SD != nil {
			out = append(out, fmt.Sprintf("%s %s ± %s %s", k.Short(), k.Number(p.n.Style), k.Spread(p.n.Style), k.Unit(p.n.Style)))
		}
	}
	if out == nil {
		return ""
	}
	return "Largest loads with their standard deviation: " + strings.Join(out, ", ") + "."
}

// spread says the figure of the car as drawn and of most cars.
func (p *page) spread(t *engine.ToleranceResult) string {
	text := fmt.Sprintf("The %s error is %s as drawn", figureNames[t.Figure.Name], p.toeText(float64(t.Figure.Nominal)))
	if t.Figure.Percentile95.Valid() {
		text += ", " + p.toeText(float64(t.Figure.Percentile95)) + " or less on 95 of 100 cars."
	} else {
		text += "; " + study.Spoken(t.Figure.Problem) + "."
	}
	if y := t.Yield; y != nil && !y.AsDrawn {
		text += " The car as drawn does not pass itself."
	}
	return text
}

// figureNames are the figures of a yield as a sentence has them.
var figureNames = map[string]string{"peak": "largest", "rms": "RMS"}

func percent(x engine.Number) string { return number.Percent(100*float64(x)) + " %" }

func (p *page) contributors(list []engine.Contributor) string {
	var names []string
	for i := range list[:min(mostContributors, len(list))] {
		c := &list[i]
		text := p.changeLabel(c.Parameter) + ", " + percent(c.Share) + " of the spread"
		if c.Halved.Valid() && float64(c.Halved) > 0 {
			text += " (" + percent(c.Halved) + " more pass with half its tolerance)"
		}
		names = append(names, text)
	}
	return strings.Join(names, "; ")
}

// omitted writes what is missing from the sheet.
func (p *page) omitted() { p.points("Not worked out", p.Omitted) }
