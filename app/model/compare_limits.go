package model

import (
	"math"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// limitRow is the row of a limit of the search, beside that of the figure that it limits.
type limitRow struct {
	rowSource
	of string // key of the figure; empty of what is no figure
}

type limitRows []limitRow

// instead reports whether a limit's row shows all that a figure's would.
func (l limitRows) instead(key string) bool {
	for i := range l {
		if l[i].of == key {
			return true
		}
	}
	return false
}

// limitBetter says of which limited results more, or less, is better than just enough.
var limitBetter = map[study.LimitKey]better{
	"outerBallAngle": less, "innerBallAngle": less, "dragLinkOuterBallAngle": less,
	"tieRodLoad": less, "armTwist": less, "armBend": less, "studBending": less,
	"threadEngagement": more, "adjusterRange": more, "dragLinkThreadEngagement": more, "dragLinkAdjusterRange": more,
	study.Clearance: more,
}

// limits returns the rows of the limits of the study's search.
func (c *comparer) limits() (list limitRows) {
	doc := c.desk.Session.Document()
	if doc.Search == nil {
		return nil
	}
	for i := range doc.Search.Limits {
		list = append(list, c.limit(doc, i))
	}
	return list
}

// limit is the row of limit i: the value nearest to being broken in any set-up.
func (c *comparer) limit(doc *study.Document, i int) limitRow {
	l := doc.Bounded(&doc.Search.Limits[i])
	label, unit := LimitLabel(doc, &l)
	if l.Side != "" {
		label += ", " + string(l.Side)
	}
	row := limitRow{rowSource: rowSource{
		CompareRow: CompareRow{
			Key: "limit " + label, Label: label, Note: c.bounds(&l, unit), Part: roomPart, Usual: true,
			Meaning: "The value nearest to breaking the limit in any set-up of the search, and how much is to spare.",
		},
		better: limitBetter[l.Result], write: func(x float64) string { return c.amount(x, unit) },
		cell: func(car *Car) CompareCell { return c.stand(car, i) },
	}}
	row.of, row.Part = limitedFigure(&l)
	for _, a := range c.answers {
		if a.Served == nil {
			continue
		}
		if at := engine.Tightest(a.Served.Limits, len(doc.Search.Limits))[i]; at != nil {
			row.Lacks = lacks(at)
		}
		break
	}
	return row
}

// limitedFigure returns the figure that a limit is of, if there is one, and its part of the
// table.
func limitedFigure(l *study.Limit) (key string, part int) {
	key = string(l.Result)
	if l.At == study.AtLock {
		switch l.Result {
		case "outerBallAngle":
			key = "outerBallAtLock"
		case "innerBallAngle":
			key = "innerBallAtLock"
		}
	}
	for i := range figureRows {
		if figureRows[i].key == key {
			return key, figureRows[i].part
		}
	}
	return "", roomPart
}

// bounds says in a few signs what a limit allows, with its unit.
func (c *comparer) bounds(l *study.Limit, unit string) string {
	text := ""
	switch {
	case l.Min != nil && l.Max != nil:
		text = c.amount(*l.Min, unit) + " to " + c.amount(*l.Max, unit)
	case l.Min != nil:
		text = "≥ " + c.amount(*l.Min, unit)
	case l.Max != nil:
		text = "≤ " + c.amount(*l.Max, unit)
	}
	if u := c.n.AmountUnit(unit); u != "" {
		text += " " + u
	}
	return text
}

// amount writes a value of a limit without its unit, and lengths without a fraction: a
// column has no room for it.
func (c *comparer) amount(x float64, unit string) string {
	file := c.file()
	if unit == string(file) {
		return c.n.LengthDecimal(file.Millimetres(x))
	}
	return c.n.Amount(x, unit, file)
}

// stand is the cell of limit i.
func (c *comparer) stand(car *Car, i int) CompareCell {
	a := c.answer(car)
	if k, pending := yet(a.Served != nil, a.CompareFault); pending {
		return k
	}
	doc := c.desk.Session.Document()
	l := engine.Tightest(a.Served.Limits, len(doc.Search.Limits))[i]
	if l == nil {
		return missing("a set-up cannot be served")
	}
	k := once(float64(l.Value))
	k.Broken = !l.Held && !l.Unmeasured()
	k.Title = l.Where(func(x float64) string { return c.n.Travel(doc.Units.Millimetres(x)) })
	if l.Scenario != "" {
		k.Title = joined(k.Title, "in set-up "+l.Scenario)
	}
	if room := l.Room(); l.Value.Valid() && !math.IsInf(room, 0) {
		k.Spare = c.amount(math.Abs(room), l.Unit) + " spare"
		if k.Broken {
			k.Spare = "short " + c.amount(math.Abs(room), l.Unit)
		}
	}
	return k
}

func joined(a, b string) string {
	if a == "" {
		return b
	}
	return a + ", " + b
}
