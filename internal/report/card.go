package report

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"toewright/internal/engine"
	"toewright/internal/number"
)

// Forms of what is written of a candidate: the bench sheet for who makes the part, the card
// for who fits it, and the record of those that were measured.
const (
	SheetForm = "sheet"
	CardForm  = "card"
	// SeriesForm is the record of the cars of a series that were measured.
	SeriesForm = "series"
)

// Forms lists the forms.
var Forms = []string{SheetForm, CardForm, SeriesForm}

// Card is what a fitting card has beside the cars and arms of a [Sheet].
type Card struct {
	Gauge number.Style // by which the car is checked
	// Covers are the set-ups within which the part holds its limit, nil where they could not
	// be found.
	Covers *engine.CoversResult
	// Band is the series of cars on the travels of the table, nil where the study has no
	// tolerances.
	Band *engine.ToleranceResult
}

// card gathers what the card alone has.
func (g *gatherer) card() (err error) {
	s := g.sheet
	s.Card.Gauge = g.gauge()
	covers := engine.CoversOptions{Candidate: s.Candidate}
	if s.Study.Yield == nil {
		covers.Limit = new(usualLimit)
	}
	if s.Card.Covers, err = engine.Covers(g.ctx, s.Study, covers); err != nil {
		if err := g.omit("what it fits", err); err != nil {
			return err
		}
	}
	if len(s.Study.Tolerances) == 0 {
		return nil
	}
	s.Card.Band, err = engine.Tolerance(g.ctx, tableStudy(s.Study), engine.ToleranceOptions{
		Candidate: s.Candidate, Cars: g.options.Cars, Progress: g.options.Progress,
	})
	if err == nil {
		err = g.ctx.Err() // a series cut short is no band
	}
	if err != nil {
		s.Card.Band = nil
		return g.omit("band of readings", err)
	}
	return nil
}

// usualLimit is what is held where the study states no limit, degrees: common practice for a
// road car.
const usualLimit = 0.1

// gauge returns how the customer reads toe: as the study does, or by indicators where that
// is in degrees, with a base of the customer's own where one is given.
func (g *gatherer) gauge() number.Style {
	d := g.sheet.Study
	style := d.Style()
	if style.Gauge == number.Degrees {
		style.Gauge = number.Indicators
	}
	if b := g.options.Base; b != nil {
		style.Base = d.Units.Millimetres(*b)
	}
	return style
}

// form returns the form that is asked for.
func (o *Options) form() (string, error) {
	if form := cmp.Or(o.Form, SheetForm); slices.Contains(Forms, form) {
		return form, nil
	}
	return "", &engine.Error{Key: "form", Message: fmt.Sprintf("%.40q is none of %s", o.Form, strings.Join(Forms, ", "))}
}
