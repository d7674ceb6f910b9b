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
	add := func(label, unit string, of [2]engine.BySide, write func(float64) string) {
		a, b := worse(of[0]), worse(of[1])
		if math.IsNaN(a - b) {
			return
		}
		k := Cost{label, unit, write(a), write(b), "the same"}
		switch {
		case k.Before == k.After:
		case a > b:
			k.Saves = "saves " + write(a-b)
		default:
			k.Saves = "costs " + write(b-a)
		}
		list = append(list, k)
	}
	b, a := &cars[0], &cars[1]
	add("Scrub by static toe", "m/km", [2]engine.BySide{b.Scrub, a.Scrub}, func(x float64) string { return number.Decimal(x, 3) })
	add("Drag by static toe at "+number.Trimmed(engine.DefaultSpeed, 0)+" km/h", "W",
		[2]engine.BySide{{Left: b.Drag, Right: b.Drag}, {Left: a.Drag, Right: a.Drag}}, func(x float64) string { return number.Decimal(x, 1) })
	add("Steer from one wheel's bump", n.SlopeUnit(), [2]engine.BySide{b.AxleSteer, a.AxleSteer}, func(x float64) string { return n.Slope(x / mm(1)) })
	add("Drift over "+number.Trimmed(engine.DefaultDistance, 0)+" m, one wheel at full bump", n.LengthUnit(),
		[2]engine.BySide{b.Drift, a.Drift}, func(x float64) string { return n.LongNumber(mm(x)) })
	return list, nil
}

// worse returns the size of an estimate at the worse wheel, NaN where it has none.
func worse(of engine.BySide) float64 {
	return max(math.Abs(float64(of.Left)), math.Abs(float64(of.Right)))
}
