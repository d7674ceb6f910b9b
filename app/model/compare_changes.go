package model

import (
	"maps"
	"slices"
	"strings"

	"toewright/internal/number"
	"toewright/solver"
)

// shortWords name the parameters that are changed most where there is little room.
var shortWords = map[string]string{
	"tieRodOuterHeight": "outer ball", "tieRodInnerHeight": "inner ball", "tieRodInnerLateral": "inner ball out",
	"steeringArmLength": "arm", "steeringArmOffset": "arm offset", "rideHeight": "ride height",
	"upperBallJointHeight": "upper joint", "lowerBallJointHeight": "lower joint",
}

// shortWord names a parameter in two or three words, and its side.
func shortWord(p solver.Parameter, sides solver.Selection) string {
	word := shortWords[p.Key]
	if word == "" {
		word = p.Label
	}
	if suffix := sides.Suffix(); suffix != "" {
		word += " " + suffix[1:2]
	}
	return word
}

// ShortChanges lists what a car changes where there is little room: "outer ball −6.00".
func (d *Desk) ShortChanges(car *Car) (list []string) {
	doc, n := d.Session.Document(), NumbersOf(d.Session.Document())
	for _, key := range slices.Sorted(maps.Keys(car.Changes)) {
		p, sides, err := solver.FindParameter(d.Session.Cars().Design, key)
		if err != nil {
			continue
		}
		x := car.Changes[key]
		text := n.Amount(x, fileUnit(doc, p.Quantity), doc.Units)
		if p.Quantity != solver.AngleQuantity {
			text = n.LengthDecimal(doc.Units.Millimetres(x))
		}
		if !p.Absolute {
			text = number.Signed(x, text)
		}
		list = append(list, shortWord(p, sides)+" "+text)
	}
	return list
}

// LessThan lists by how much a car differs from another: in what either changes, in its
// rods, and in the peak of its toe change.
func (d *Desk) LessThan(car, from *Car) (list []AnswerValue) {
	doc, n := d.Session.Document(), NumbersOf(d.Session.Document())
	keys := slices.Sorted(maps.Keys(car.Changes))
	for key := range from.Changes {
		if !slices.Contains(keys, key) {
			keys = append(keys, key)
		}
	}
	slices.Sort(keys)
	for _, key := range keys {
		p, sides, err := solver.FindParameter(d.Session.Cars().Design, key)
		if err != nil {
			continue
		}
		by := d.ValueOf(car.Index, key) - d.ValueOf(from.Index, key)
		list = append(list, AnswerValue{Label: capital(shortWord(p, sides)), Text: number.Signed(by, n.AmountText(by, fileUnit(doc, p.Quantity), doc.Units))})
	}
	var rods, peaks []string
	for _, s := range solver.Sides {
		by := car.Axle.TieRodLength(s) - from.Axle.TieRodLength(s)
		rods = append(rods, number.Signed(by, n.Length(by)))
		f, g := d.Session.Cars().ToeFigures(car, s), d.Session.Cars().ToeFigures(from, s)
		change := float64(f.Peak - g.Peak)
		peaks = append(peaks, number.Signed(change, n.Toe(change)+" "+n.ToeMark()))
	}
	return append(list, AnswerValue{Label: "Tie rod", Text: bothSides(rods)}, AnswerValue{Label: "Peak", Text: bothSides(peaks)})
}

// bothSides writes a text of each side, once where they are alike.
func bothSides(text []string) string {
	if text[0] == text[1] {
		return text[0]
	}
	return "left " + strings.Join(text, ", right ")
}
