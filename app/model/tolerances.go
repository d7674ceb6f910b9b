package model

import (
	"cmp"
	"math"
	"slices"

	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/solver"
)

// AddTolerance adds a tolerance of a parameter, the registry's usual one to begin
// with: one standard deviation, in file units or degrees.
func (s *Session) AddTolerance(key string) error {
	p, _, err := solver.FindParameter(s.cars.Design, key)
	if err != nil {
		return err
	}
	return s.addUsual("tolerance of "+key, []study.Tolerance{{Parameter: key, PlusMinus: round(s.doc.FromSolver(p, p.Tolerance))}})
}

// addUsual adds tolerances of which nobody has said that they are those of the shop.
func (s *Session) addUsual(label string, list []study.Tolerance) error {
	return s.edit(label, "", func(d *study.Document) { d.Tolerances = append(d.Tolerances, list...) }, func(d *study.Document) {
		d.Attribute(s.doc, study.FromTyping)
		for i := len(s.doc.Tolerances); i < len(d.Tolerances); i++ {
			d.SetSource(entryPath("tolerances", i), study.FromTemplate)
		}
	})
}

// AddUsualTolerances adds those of the main parameters of a forged arm and its frame.
func (s *Session) AddUsualTolerances() error {
	var list []study.Tolerance
	for _, key := range append(slices.Clone(MainParameters), "caster") {
		if p, _, err := solver.FindParameter(s.cars.Design, key); err == nil {
			list = append(list, study.Tolerance{Parameter: key, PlusMinus: round(s.doc.FromSolver(p, p.Tolerance))})
		}
	}
	return s.addUsual("usual tolerances", list)
}

// SetTolerance changes a tolerance.
func (s *Session) SetTolerance(i int, change func(*study.Tolerance)) error {
	return s.Edit("tolerance", "", func(d *study.Document) { change(&d.Tolerances[i]) })
}

// RemoveTolerance removes a tolerance.
func (s *Session) RemoveTolerance(i int) error {
	return s.Edit("remove a tolerance", "", func(d *study.Document) { d.Tolerances = slices.Delete(d.Tolerances, i, i+1) })
}

// UsualLimit is the limit of toe change, in degrees, that a series is judged by where a
// study states none: 1/32 in per wheel over 15 in, the usual race target. Common
// practice.
var UsualLimit = round(solver.Angle(math.Atan(1.0 / 32 / 15)).Degrees())

// ToeLimit returns the toe change, less the target, by which a car is judged: that of the
// study's series, [UsualLimit] where it states none.
func (s *Session) ToeLimit() solver.Angle {
	return solver.Deg(YieldOf(s.doc).Limit)
}

// YieldOf returns what a series is judged by: as the study says, or by [UsualLimit].
func YieldOf(d *study.Document) study.Yield {
	var y study.Yield
	if d.Yield != nil {
		y = *d.Yield
	}
	y.Limit = cmp.Or(y.Limit, UsualLimit)
	return y
}

// EditYield changes what a series is judged by.
func (s *Session) EditYield(change func(*study.Yield)) error {
	return s.Edit("limit of the series", "", func(d *study.Document) {
		if d.Yield == nil {
			d.Yield = &study.Yield{Limit: UsualLimit}
		}
		change(d.Yield)
	})
}

// ShowBand shows the spread of a series about the curves of its car.
func (d *Desk) ShowBand(r *engine.ToleranceResult) {
	doc := d.Session.Document()
	car := indexOf(doc, r.Candidate)
	d.View.Bands = nil
	for _, s := range solver.Sides {
		b := Band{Side: s, Car: car}
		target := d.Session.Cars().Target(s)
		for _, p := range r.Positions {
			if p.Side != s.String() {
				continue
			}
			mm := doc.Units.Millimetres(p.Travel)
			wanted := target.At(mm).Radians()
			b.Travel = append(b.Travel, mm)
			b.Low = append(b.Low, wanted+solver.Deg(float64(p.Low)).Radians())
			b.High = append(b.High, wanted+solver.Deg(float64(p.High)).Radians())
		}
		if len(b.Travel) > 0 {
			d.View.Bands = append(d.View.Bands, b)
		}
	}
}
