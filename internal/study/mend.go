package study

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// Mend is the repair of a plain slip, of a sign or a unit, by one press.
type Mend struct {
	Label  string // Label says what is done: "Change the sign of y".
	change func(*Document)
}

// Apply makes the repair.
func (m *Mend) Apply(d *Document) { m.change(d) }

// mostMends is how many repairs are offered for one finding.
const mostMends = 2

// MendsOf returns the repairs of what a finding of [Check] is about: changes of a sign or a
// unit by which the finding goes, none of its place comes, and the fewest others stay. They
// are few, none where the slip is not a plain one; nothing is solved for them.
func MendsOf(d *Document, f Finding) (mends []Mend) {
	least := math.MaxInt
	for _, m := range d.mendsAt(f.Path) {
		next := d.Clone()
		m.Apply(next)
		left := next.plainSlips()
		if len(left) > least || slices.ContainsFunc(left, func(g Finding) bool { return g.Path == f.Path }) {
			continue
		}
		if len(left) < least {
			mends, least = nil, len(left)
		}
		if len(mends) < mostMends {
			mends = append(mends, m)
		}
	}
	return mends
}

// plainSlips finds what needs nothing to be solved.
func (d *Document) plainSlips() []Finding {
	return d.checked(checkVehicle, checkSigns, checkOrder, checkScale, checkCoincident, checkWheel, checkMirror, checkTravel, checkReadings)
}

// mendsAt lists what may be tried at a path.
func (d *Document) mendsAt(path string) []Mend {
	switch path {
	case "units":
		return []Mend{{fmt.Sprintf("Take all numbers as %s", d.Units.Other()), func(d *Document) { d.Units = d.Units.Other() }}}
	case "vehicle.wheelbase":
		return d.unitMends(func(d *Document, by float64) { d.Vehicle.Wheelbase *= by })
	case "travel":
		return d.unitMends(func(d *Document, by float64) {
			w := d.Window()
			d.Travel = &Travel{w.Bump * by, w.Droop * by, w.Step * by}
		})
	}
	for _, side := range sides {
		if path == "suspension."+string(side) {
			return []Mend{{fmt.Sprintf("Change the sign of every y of the %s side", side), func(d *Document) { d.turnSide(side) }}}
		}
	}
	for _, p := range d.Points() {
		if path == d.PointPath(p) {
			return d.pointMends(p)
		}
	}
	return d.readingMends(path)
}

// unitMends are the two by which a length was taken in the wrong unit.
func (d *Document) unitMends(scale func(*Document, float64)) []Mend {
	by := d.Units.Other().Convert(1, d.Units)
	return []Mend{
		{fmt.Sprintf("Take it as %s", d.Units.Other()), func(d *Document) { scale(d, by) }},
		{fmt.Sprintf("Take it as %s", d.Units), func(d *Document) { scale(d, 1/by) }}, // shown in the other unit, as it was typed
	}
}

// turnSide puts the points of a side onto the other side of the car.
func (d *Document) turnSide(side Side) {
	for _, p := range d.Points() {
		if p.Side == side {
			p.Place = p.Place.Mirrored()
			d.SetPoint(p)
		}
	}
}

// pointMends change the sign of y, or the unit of the whole point or of one coordinate.
func (d *Document) pointMends(p PlacedPoint) []Mend {
	put := func(at func(Vec3) Vec3) func(*Document) {
		q := p
		q.Place = at(p.Place)
		return func(d *Document) { d.SetPoint(q) }
	}
	mends := []Mend{{"Change the sign of y", put(Vec3.Mirrored)}}
	by := d.Units.Other().Convert(1, d.Units)
	for _, unit := range []struct {
		Units
		by float64
	}{{d.Units.Other(), by}, {d.Units, 1 / by}} {
		mends = append(mends, Mend{fmt.Sprintf("Take the point as %s", unit.Units), put(func(v Vec3) Vec3 {
			return Vec3{v[0] * unit.by, v[1] * unit.by, v[2] * unit.by}
		})})
		for axis, name := range [...]string{"x", "y", "z"} {
			mends = append(mends, Mend{fmt.Sprintf("Take %s as %s", name, unit.Units), put(func(v Vec3) Vec3 {
				v[axis] *= unit.by
				return v
			})})
		}
	}
	return mends
}

// readingMends change the sign or the unit of a reading.
func (d *Document) readingMends(path string) []Mend {
	for i := range d.Readings {
		prefix := fmt.Sprintf("readings.%d.values.", i)
		if !strings.HasPrefix(path, prefix) {
			continue
		}
		for k := range d.Readings[i].Values {
			if path != fmt.Sprintf("%s%d", prefix, k) {
				continue
			}
			scale := func(d *Document, by float64) { d.Readings[i].Values[k][1] *= by }
			return append([]Mend{{"Change the sign of the reading", func(d *Document) { scale(d, -1) }}}, d.unitMends(scale)...)
		}
	}
	return nil
}
