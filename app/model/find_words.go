package model

import (
	"cmp"
	"fmt"
	"strings"

	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// Question is what is asked of a search, in a line for each of its parts.
type Question struct{ Free, Target, SetUps, Limits string }

// Question returns the study's, as far as it is known how the selected car stands to it.
func (d *Desk) Question() Question {
	doc, f := d.Session.Document(), SearchOf(d.Session.Document(), d.Session.Cars().Design)
	return Question{
		Free: freeLine(doc, d.Session.Cars().Design, f), Target: targetLine(doc, f),
		SetUps: setUpsLine(f), Limits: d.limitsLine(),
	}
}

// freeLine says what may change, and how far.
func freeLine(doc *study.Document, design *solver.Design, f *study.Search) string {
	n := NumbersOf(doc)
	var list []string
	for i := range f.Variables {
		v := &f.Variables[i]
		p, _, err := solver.FindParameter(design, v.Parameter)
		if err != nil {
			continue
		}
		text := fmt.Sprintf("%s %s to %s", p.Label, n.ValueNumber(doc, p, v.Min), n.Value(doc, p, v.Max))
		switch {
		case v.Grid > 0:
			text += " by " + n.ValueNumber(doc, p, v.Grid)
		case len(v.Sizes) > 0:
			text += ", of " + number.Count(len(v.Sizes), "size")
		}
		list = append(list, text)
	}
	return cmp.Or(strings.Join(list, "; "), "nothing yet")
}

// targetLine says which curve is wanted, over which window, and what is made small.
func targetLine(doc *study.Document, f *study.Search) string {
	n, w := NumbersOf(doc), doc.SearchWindow()
	curve := [...]string{FlatTarget: "flat", PointsTarget: "by " + number.Count(len(f.Target), "point"), CarTarget: "as " + f.TargetOf}
	text := ""
	if kind := KindOfTarget(f); kind == SlopeTarget {
		text = "slope " + n.Slope(Slope(f)/doc.Units.Millimetres(1)) + " " + n.SlopeUnit()
	} else {
		text = curve[kind]
	}
	if f.Band > 0 {
		text += " within ±" + n.ToeNumber(solver.Deg(f.Band))
	}
	mm := doc.Units.Millimetres
	return fmt.Sprintf("%s, %s bump to %s droop; %s small", text, n.TravelNumber(mm(w.Bump)), n.Travel(mm(w.Droop)),
		map[string]string{"": "RMS", "rms": "RMS", "peak": "peak"}[f.Minimise])
}

// setUpsLine names the set-ups, and says how they count.
func setUpsLine(f *study.Search) string {
	var names []string
	for _, k := range f.Scenarios {
		names = append(names, k.Name)
	}
	switch {
	case len(names) == 0:
		return "the car as it stands"
	case len(names) == 1:
		return names[0]
	case f.Combine == "worst":
		return strings.Join(names, ", ") + "; the worst counts"
	}
	return strings.Join(names, ", ") + "; their mean counts"
}

// limitsLine says how the selected car stands to the limits.
func (d *Desk) limitsLine() string {
	car := d.Selected()
	list, err := d.Standing(car)
	switch {
	case err != nil || car.Err != nil:
		return "cannot be measured on this car"
	case len(list) == 0:
		return "none"
	}
	broken, least := 0, 0
	for i := range list {
		if !list[i].Held {
			broken++
		}
		if list[i].Ease < list[least].Ease {
			least = i
		}
	}
	tight := list[least].Label
	if broken > 0 {
		return fmt.Sprintf("✗ %d of %d broken: %s %s", broken, len(list), tight, list[least].Spare)
	}
	return fmt.Sprintf("✓ %s held; least to spare: %s %s", number.Count(len(list), "limit"), tight, list[least].Spare)
}
