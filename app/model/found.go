package model

import (
	"fmt"
	"maps"
	"slices"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// Answer is what a search found, in words.
type Answer struct {
	Name string // of the candidate
	What string // the figure that was made small: "Peak toe change"
	// Figure is that of the candidate and Start that of the car before, with no unit. Exact
	// is that of the values without steps and sizes; "" where none are stated.
	Figure, Start, Exact string
	Unit                 string
	Values               []AnswerValue
	Sure                 []Remark // how sure it is that there is nothing better
	Remarks              []Remark // what else is to be known
}

// AnswerValue is a parameter's value as it is read to the forge. Exact is the one that it
// was put on a step or a size from, "" where it was on none.
type AnswerValue struct{ Label, Text, Exact string }

// Remark is a sentence about an answer. A warning asks for a second look.
type Remark struct {
	Text    string
	Warning bool
}

// Class returns "warning" or "".
func (r Remark) Class() string {
	if r.Warning {
		return "warning"
	}
	return ""
}

// Found makes the answer of a search a candidate, selects it and returns what is to be
// known of it. Doc is the study that was searched.
func (d *Desk) Found(doc *study.Document, r *engine.SearchResult) (*Answer, error) {
	i, err := d.Session.AddCandidate(study.Candidate{Name: "found", Changes: r.Taken()})
	if err != nil {
		return nil, err
	}
	d.Select(i)
	j := judge{doc, NumbersOf(d.Session.Document()), d.Session.Cars(), r}
	a := j.figures()
	a.Name, a.Values = d.Session.Cars().At(i).Name, j.made()
	a.Sure = slices.Concat(j.ended(), j.unique(), j.bounds())
	a.Remarks = slices.Concat(j.good(), j.limits(), j.grids(), j.most(), j.scenarios(), j.elsewhere(d.Session.Cars().At(i)))
	return a, nil
}

// figures are those of the answer.
func (j judge) figures() *Answer {
	r, toe := j.r, func(x engine.Number) string { return j.n.ToeNumber(degreesOf(x)) }
	a := &Answer{What: MinimisedLabel(r.Minimise, r.Weighted()), Unit: j.n.ToeUnit(), Figure: toe(r.Best.Score), Start: toe(r.Start.Score)}
	if !r.Start.Score.Valid() {
		a.Start = ""
	}
	if r.Robust != nil && r.Robust.Figure.Valid() {
		a.What, a.Figure, a.Start = fmt.Sprintf("%s of %s %% of the cars made", a.What, number.Percent(r.Robust.Percentile)), toe(r.Robust.Figure), toe(r.Robust.Start)
	}
	if k := r.Rounded; k != nil {
		a.Exact = a.Figure
		if a.Figure = toe(r.Best.Score + k.Cost); k.AtPercentile.Valid() {
			a.Figure = toe(k.AtPercentile)
		}
	}
	return a
}

// made are the values of the car that was made of the answer, with those that they were
// rounded from.
func (j judge) made() []AnswerValue {
	list := j.values(j.r.Taken())
	if j.r.Rounded == nil {
		return list
	}
	for i, v := range j.values(j.r.Best.Values) {
		if i < len(list) && list[i].Label == v.Label && list[i].Text != v.Text {
			list[i].Exact = v.Text
		}
	}
	return list
}

// judge says what is to be known of an answer.
type judge struct {
	doc  *study.Document
	n    Numbers
	cars *Cars
	r    *engine.SearchResult
}

// values writes changes by the registry's labels.
func (j judge) values(changes study.Changes) []AnswerValue {
	var list []AnswerValue
	for _, key := range slices.Sorted(maps.Keys(changes)) {
		p, sides, err := solver.FindParameter(j.cars.Design, key)
		if err != nil {
			continue
		}
		label := p.Label
		if suffix := sides.Suffix(); suffix != "" {
			label += ", " + suffix[1:]
		}
		list = append(list, AnswerValue{Label: label, Text: j.n.Value(j.doc, p, changes[key])})
	}
	return list
}

// ChangesInWords lists what a car changes.
func ChangesInWords(d *study.Document, cars *Cars, car *Car) []AnswerValue {
	return judge{doc: d, n: NumbersOf(d), cars: cars}.values(car.Changes)
}

// InWords lists changes in one line.
func InWords(d *study.Document, cars *Cars, changes study.Changes) string {
	return judge{doc: d, n: NumbersOf(d), cars: cars}.inWords(changes)
}

// degreesOf returns an angle of a result.
func degreesOf(x engine.Number) solver.Angle { return solver.Deg(float64(x)) }

// good says how good the answer is.
func (j judge) good() []Remark {
	mm := j.doc.Units.Millimetres
	text := fmt.Sprintf("%s less target: %s, from %s, over %s bump and %s droop, %s.", MinimisedLabel(j.r.Minimise, j.r.Weighted()),
		j.n.ToeText(degreesOf(j.r.Best.Score)), j.n.ToeNumber(degreesOf(j.r.Start.Score)),
		j.n.Travel(mm(j.r.Window.Bump)), j.n.Travel(mm(j.r.Window.Droop)), sideWords[j.r.Side])
	list := []Remark{{Text: text}}
	if j.r.TargetNote != "" {
		list = append(list, Remark{"Of the wanted curve: " + j.r.TargetNote + ".", true})
	}
	if j.r.StartNote != "" {
		list = append(list, Remark{"Against the base car: " + j.r.StartNote + ".", true})
	}
	return list
}

// ended says that the search was stopped, where it was.
func (j judge) ended() []Remark {
	if j.r.Converged {
		return nil
	}
	return []Remark{{"The search did not come to its end: this is the best so far.", true}}
}

// MinimisedLabel names what a search, or a trade-off, made small.
func MinimisedLabel(minimise string, weighted bool) string {
	name := map[string]string{"rms": "RMS", "peak": "Peak"}[minimise]
	if weighted {
		name = "Weighted " + map[string]string{"rms": "RMS", "peak": "peak"}[minimise]
	}
	return name + " toe change"
}

// sideWords say which wheel was judged.
var sideWords = map[string]string{"left": "left wheel", "right": "right wheel", "both": "worse wheel"}

// asGood is the part by which a second optimum may be worse and still count as good
// as the first.
const asGood = 1.05

// unique says how far the answer is the only one.
func (j judge) unique() []Remark {
	r := j.r
	if !r.Converged || r.Restarts == 0 {
		return nil
	}
	if len(r.Optima) > 1 && float64(r.Optima[1].Value) <= asGood*float64(r.Optima[0].Value)+float64(visible) {
		return []Remark{{fmt.Sprintf("It is not the only one: %s do as well, with %s.", j.inWords(r.Optima[1].Values), j.n.ToeText(solver.Deg(float64(r.Optima[1].Value)))), true}}
	}
	if r.Agreeing == r.Restarts {
		return []Remark{{Text: fmt.Sprintf("All %d searches, started all over the bounds, ended here: nothing better lies within them.", r.Restarts)}}
	}
	return []Remark{{Text: fmt.Sprintf("%d of %d searches, started all over the bounds, ended here, the others at worse places.", r.Agreeing, r.Restarts)}}
}

// visible is the difference of two toe figures, in degrees, that no gauge shows.
const visible = 0.001

// inWords lists values in one line.
func (j judge) inWords(changes study.Changes) string {
	text := ""
	for i, v := range j.values(changes) {
		if i > 0 {
			text += ", "
		}
		text += v.Label + " " + v.Text
	}
	return text
}

// bounds names the values that lie on a bound.
func (j judge) bounds() []Remark {
	var list []Remark
	for _, b := range j.r.AtBound {
		p, _, err := solver.FindParameter(j.cars.Design, b.Parameter)
		if err != nil {
			continue
		}
		which := map[string]string{"min": "lower", "max": "upper"}[b.Bound]
		of := "The "
		if j.r.Rounded != nil {
			of = "In the exact answer the "
		}
		list = append(list, Remark{fmt.Sprintf("%s%s lies on its %s bound, %s: beyond it there may be a better one.", of, p.Label, which, j.n.Value(j.doc, p, b.Value)), true})
	}
	return list
}

// scenarios says how well each set-up is served, and which is the worst.
func (j judge) scenarios() []Remark {
	if len(j.r.Scenarios) < 2 {
		return nil
	}
	var list []Remark
	for _, s := range j.r.Scenarios {
		text := fmt.Sprintf("Set-up %q: %s.", s.Name, j.n.ToeText(degreesOf(s.Score)))
		if s.Binds {
			text = fmt.Sprintf("Set-up %q: %s. This one decides.", s.Name, j.n.ToeText(degreesOf(s.Score)))
		}
		list = append(list, Remark{Text: text})
	}
	return list
}
