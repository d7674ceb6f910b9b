package model

import (
	"errors"
	"math"

	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/solver"
)

// AdviseOf returns what advice a study asks for. One that asks for none gets the usual:
// the height of the outer ball, in spacers of 1 mm or 1/16 in.
func AdviseOf(d *study.Document, design *solver.Design) *study.Advise {
	if d.Advise != nil {
		return d.Advise
	}
	v, ok := usualVariable(d, design, MainParameters[0])
	if !ok {
		return nil
	}
	a := &study.Advise{Parameter: v.Parameter, Step: 1, Min: v.Min, Max: v.Max}
	if d.Units == study.Inch {
		a.Step = 1.0 / 16
	}
	return a
}

// WithReadings returns the document as a fit takes it: without runs that have no
// readings, and with the usual advice where it asks for none.
func WithReadings(d *study.Document, design *solver.Design) *study.Document {
	with := *d
	with.Readings = filled(d.Readings)
	with.Advise = AdviseOf(d, design)
	return &with
}

// filled returns the sets of readings that have any.
func filled(sets []study.Reading) (list []study.Reading) {
	for _, r := range sets {
		if len(r.Values) > 0 {
			list = append(list, r)
		}
	}
	return list
}

// EditAdvise changes what advice the study asks for.
func (s *Session) EditAdvise(change func(*study.Advise)) error {
	return s.Edit("what to advise on", "", func(d *study.Document) {
		if d.Advise = AdviseOf(d, s.cars.Design); d.Advise == nil {
			d.Advise = &study.Advise{}
		}
		change(d.Advise)
	})
}

// Advised makes the advice of a fit a candidate and selects it.
func (d *Desk) Advised(parameter string, r *engine.FitResult) error {
	k := study.Candidate{Name: "advised", Changes: study.Changes{}}
	left, l := r.Advice["left"]
	right, rr := r.Advice["right"]
	switch {
	case l && rr && left.Value != right.Value:
		k.Changes[parameter+"@left"], k.Changes[parameter+"@right"] = left.Value, right.Value
	case l:
		k.Changes[parameter] = left.Value
	case rr:
		k.Changes[parameter] = right.Value
	}
	i, err := d.Session.AddCandidate(k)
	if err == nil {
		d.Select(i)
	}
	return err
}

// band90 is half the width of a 90 % band, in standard deviations of a normal
// distribution.
const band90 = 1.6448536269514722

// ShowFit shows the curves that a fit predicts, with their 90 % bands.
func (d *Desk) ShowFit(r *engine.FitResult) {
	doc := d.Session.Document()
	d.View.Bands = nil
	for _, car := range r.Cars {
		for _, s := range solver.Sides {
			b := Band{Side: s, Car: indexOf(doc, car.Candidate)}
			target := d.Session.Cars().Target(s)
			for _, p := range car.Positions {
				if p.Side != s.String() || math.IsNaN(float64(p.Change)) {
					continue
				}
				mm := doc.Units.Millimetres(p.Travel)
				middle := target.At(mm).Radians() + solver.Deg(float64(p.Change)).Radians()
				half := band90 * solver.Deg(float64(p.SD)).Radians()
				b.Travel, b.Low, b.High = append(b.Travel, mm), append(b.Low, middle-half), append(b.High, middle+half)
			}
			if len(b.Travel) > 0 {
				d.View.Bands = append(d.View.Bands, b)
			}
		}
	}
}

// TakeFit makes the car that a fit found the base car of the study, as one edit. The
// car and the readings of the document that was fitted must still be the session's: a fit of
// others is refused.
func (s *Session) TakeFit(of *study.Document, r *engine.FitResult) error {
	if !FitsStill(of, s.doc) {
		return errStaleFit
	}
	fitted, err := engine.ApplyFit(s.doc, r)
	if err != nil {
		return err
	}
	s.Replace("take the fitted car", fitted)
	return nil
}

// errStaleFit is what the points of a fit are refused with after the study changed.
var errStaleFit = errors.New("the car or its readings changed after the fit: fit again, then take the fitted car")
