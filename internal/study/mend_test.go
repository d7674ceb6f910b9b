package study

import (
	"math"
	"testing"
)

// TestMends makes a slip of a sign or a unit in every point of every template, written out
// on both sides and mirrored: a repair that is offered brings the numbers back.
func TestMends(t *testing.T) {
	offered := map[string]int{}
	for _, tpl := range Templates() {
		for _, own := range []bool{false, true} {
			d := tpl.Document()
			if own {
				d.stateRight()
			}
			unit := d.Units.Convert(1, d.Units.Other())
			for _, p := range d.Points() {
				for slip, wrong := range map[string]Vec3{
					"sign":      p.Place.Mirrored(),
					"unit":      {p.Place[0] * unit, p.Place[1] * unit, p.Place[2] * unit},
					"unit of z": {p.Place[0], p.Place[1], p.Place[2] * unit},
				} {
					if mendsBack(t, d, p, wrong) {
						offered[slip]++
					}
				}
			}
		}
	}
	for _, slip := range []string{"sign", "unit", "unit of z"} {
		if offered[slip] < 10 {
			t.Errorf("%s: %d repairs offered", slip, offered[slip])
		}
	}
}

// mendsBack puts a point in a wrong place and takes the repair that is offered for it.
func mendsBack(t *testing.T, d *Document, p PlacedPoint, wrong Vec3) bool {
	t.Helper()
	slipped := d.Clone()
	slipped.SetPoint(PlacedPoint{p.Name, p.Side, wrong})
	for _, f := range slipped.plainSlips() {
		if f.Path != slipped.PointPath(p) {
			continue
		}
		mends := MendsOf(slipped, f)
		back := len(mends) == 0
		for _, m := range mends {
			mended := slipped.Clone()
			m.Apply(mended)
			for _, q := range mended.Points() {
				back = back || q.Name == p.Name && q.Side == p.Side && distance(q.Place, p.Place) < 1e-9*(1+math.Abs(p.Place[1]))
			}
		}
		if !back {
			t.Errorf("%s %v for %v (%s): %d repairs, of which none brings it back, the first %q", d.PointName(p), wrong, p.Place, f.Message, len(mends), mends[0].Label)
		}
		return len(mends) > 0
	}
	return false
}

// TestMendsOfTheCar takes the repairs that are not of points.
func TestMendsOfTheCar(t *testing.T) {
	for _, key := range []string{"strut-rack", "double-wishbone-centre-link"} {
		d := templateDoc(t, key)
		unit := d.Units.Convert(1, d.Units.Other())
		d.Readings = []Reading{{Side: Left, Base: d.Units.FromMillimetres(381), Gauge: "indicators"}}
		for _, travel := range []float64{-60, -40, -20, 0, 20, 40, 60} {
			d.Readings[0].Values = append(d.Readings[0].Values, [2]float64{d.Units.FromMillimetres(travel), d.Units.FromMillimetres(travel / 10)})
		}
		for name, slip := range map[string]struct {
			path   string
			wrong  func(*Document)
			number func(*Document) float64
		}{
			"wheelbase": {"vehicle.wheelbase", func(d *Document) { d.Vehicle.Wheelbase *= unit }, func(d *Document) float64 { return d.Vehicle.Wheelbase }},
			"units":     {"units", func(d *Document) { d.Units = d.Units.Other() }, func(d *Document) float64 { return d.Units.Millimetres(1) }},
			"side":      {"suspension.left", func(d *Document) { d.turnSide(Left) }, func(d *Document) float64 { return d.Suspension.Left.Points["tieRodOuter"][1] }},
			"reading":   {"readings.0.values.5", func(d *Document) { d.Readings[0].Values[5][1] *= -1 }, func(d *Document) float64 { return d.Readings[0].Values[5][1] }},
		} {
			wrong := d.Clone()
			slip.wrong(wrong)
			var m *Mend
			for _, f := range Check(wrong) {
				if f.Path == slip.path {
					if all := MendsOf(wrong, f); len(all) > 0 {
						m = &all[0]
					}
				}
			}
			if m == nil {
				t.Errorf("%s, %s: no repair", key, name)
				continue
			}
			m.Apply(wrong)
			if got, want := slip.number(wrong), slip.number(d); !(math.Abs(got-want) < 1e-9*math.Abs(want)) {
				t.Errorf("%s, %s: %q makes it %g, want %g", key, name, m.Label, got, want)
			}
		}
	}
}
