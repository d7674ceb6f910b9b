package model

import (
	"math"

	"toewright/internal/engine"
	"toewright/internal/number"
)

// Cost is an estimate of what the toe of two cars costs on the road, at the worse wheel.
type Cost struct {
	Label, Unit   string
	Before, After string
	Saves         string // what the second car saves or costs against the first
}

// Costs estimates what the toe of two cars costs, as [engine.Axle] does. What the study does
// not state enough for is left out.
func (d *Desk) Costs(before, after *Car) (list []Cost, err error) {
	doc := d.Session.Document()
	n, mm := NumbersOf(doc), doc.Units.Millimetres
	var cars [2]engine.AxleCar
	for i, car := range []*Car{before, after} {
		if cars[i], err = d.Session.Cars().Axle(car); err != nil {
			return nil, engine.InUnits(err, doc)
		}
	}
	for i, row := range [...]struct{ label, unit string }{
		{"Scrub by static toe", "m/km"},
		{"Drag by static toe at " + number.Trimmed(engine.DefaultSpeed, 0) + " km/h", "W"},
		{"Steer from one wheel's bump", n.SlopeUnit()},
		{"Drift over " + number.Trimmed(engine.DefaultDistance, 0) + " m, one wheel at full bump", n.LengthUnit()},
	} {
		write := func(x float64) string {
			switch i {
			case 0:
				return number.Decimal(x, 3)
			case 1:
				return number.Decimal(x, 1)
			case 2:
				return n.Slope(x / mm(1))
			}
			return n.LongNumber(mm(x))
		}
		a, b := costOf(&cars[0], i), costOf(&cars[1], i)
		if math.IsNaN(a - b) {
			continue
		}
		k := Cost{row.label, row.unit, write(a), write(b), "the same"}
		switch {
		case k.Before == k.After:
		case a > b:
			k.Saves = "saves " + write(a-b)
		default:
			k.Saves = "costs " + write(b-a)
		}
		list = append(list, k)
	}
	return list, nil
}

// costOf returns the size of a car's estimate i, NaN where it has none.
func costOf(c *engine.AxleCar, i int) float64 {
	both := [...]engine.BySide{c.Scrub, {Left: c.Drag, Right: c.Drag}, c.AxleSteer, c.Drift}[i]
	return max(math.Abs(float64(both.Left)), math.Abs(float64(both.Right)))
}
