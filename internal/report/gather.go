package report

import (
	"cmp"
	"context"
	"errors"
	"fmt"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// Gather works out a bench sheet. What belongs to it but cannot be worked out, such
// as a limit that the study states too little for, is left out and named; what the
// sheet is about, the cars and their arms, is an error.
func Gather(ctx context.Context, d *study.Document, o Options) (*Sheet, error) {
	paper, err := o.Paper.choose(d.Style().Units)
	if err != nil {
		return nil, err
	}
	form, err := o.form()
	if err != nil {
		return nil, err
	}
	if o.Base != nil && !(*o.Base > 0) {
		return nil, &engine.Error{Key: "base", Message: fmt.Sprintf("%g is no length of a gauge, want more than 0 %s", *o.Base, d.Units)}
	}
	d = d.Recognised()
	s := &Sheet{
		Study: d, Version: o.Version, Date: cmp.Or(o.Date, d.Date), Paper: paper,
		Candidate: o.candidate(d), Yardstick: o.Yardstick,
	}
	if s.Yardstick == "" && d.Display != nil {
		s.Yardstick = d.Display.Yardstick
	}
	s.Yardstick = cmp.Or(s.Yardstick, study.BaseName)
	g := &gatherer{ctx: ctx, sheet: s, options: &o}
	steps := []func(*gatherer) error{(*gatherer).arm, (*gatherer).cars}
	switch form {
	case SeriesForm:
		if s.Series, err = engine.Series(ctx, d, engine.SeriesOptions{Candidate: o.Candidate, Progress: o.Progress}); err == nil {
			s.Candidate, s.Window = s.Series.Candidate, s.Series.Window
		}
		return s, err
	case CardForm:
		s.Card = &Card{}
		steps = append(steps, (*gatherer).card)
	default:
		steps = append(steps, (*gatherer).parts, (*gatherer).diagnosis, (*gatherer).loads, (*gatherer).limits, (*gatherer).tolerance, (*gatherer).fit)
	}
	for _, step := range steps {
		if err := step(g); err != nil {
			return nil, err
		}
	}
	return s, nil
}

// gatherer fills a sheet.
type gatherer struct {
	ctx     context.Context
	sheet   *Sheet
	options *Options
}

func (g *gatherer) arm() (err error) {
	g.sheet.Arm, err = engine.Arm(g.ctx, g.sheet.Study, engine.ArmOptions{Candidate: g.sheet.Candidate})
	return err
}

// cars sets the curves and figures of yardstick and candidate.
func (g *gatherer) cars() error {
	s := g.sheet
	rows := tableStudy(s.Study)
	s.Travels = travelsOf(rows)
	names := []string{s.Yardstick, s.Candidate}
	if s.Yardstick == s.Candidate {
		names = names[:1]
	}
	for _, name := range names {
		car, err := g.car(name, rows)
		if err != nil {
			return err
		}
		s.Cars = append(s.Cars, car)
	}
	return nil
}

func (g *gatherer) car(name string, rows *study.Document) (Car, error) {
	c := Car{Name: name}
	figures, err := engine.Compare(g.ctx, g.sheet.Study, engine.CompareOptions{Candidate: name, Yardstick: g.options.Yardstick})
	if err != nil {
		return c, err
	}
	curves, err := engine.Sweep(g.ctx, g.sheet.Study, engine.SweepOptions{Candidate: name})
	if err != nil {
		return c, err
	}
	table, err := engine.Sweep(g.ctx, rows, engine.SweepOptions{Candidate: name})
	if err != nil {
		return c, err
	}
	copy(c.Curves[:], curves.Sweeps)
	copy(c.Rows[:], table.Sweeps)
	copy(c.Figures[:], figures.Cars)
	g.sheet.Window, g.sheet.Target = figures.Window, figures.Target
	return c, nil
}

// diagnosis says why each car's curve is what it is.
func (g *gatherer) diagnosis() error {
	d := g.sheet.Study
	for i := range g.sheet.Cars {
		c := &g.sheet.Cars[i]
		found, err := engine.Diagnose(g.ctx, d, engine.DiagnoseOptions{Candidate: c.Name})
		if err != nil {
			return g.omit("diagnosis", err)
		}
		for side := range found.Cars {
			c.Diagnosis[side] = &found.Cars[side]
		}
	}
	return nil
}

// loads finds the forces in the cars under the study's load cases.
func (g *gatherer) loads() error {
	s := g.sheet
	if len(s.Study.Loads) == 0 {
		return nil
	}
	found, err := engine.Loads(g.ctx, s.Study, engine.LoadsOptions{Candidate: s.Candidate})
	if err != nil {
		return g.omit("loads", err)
	}
	s.Loads = found
	if s.before() != nil {
		s.LoadsBefore, err = engine.Loads(g.ctx, s.Study, engine.LoadsOptions{Candidate: s.Yardstick})
	}
	return err
}

func (g *gatherer) limits() error {
	found, err := engine.Standing(g.ctx, g.sheet.Study, engine.StandingOptions{Candidate: g.sheet.Candidate})
	if err != nil {
		return g.omit("limits", err)
	}
	g.sheet.Limits = found.Limits
	return nil
}

// seriesShare is the part that the series of cars has in the progress of a sheet; the fit
// has the rest.
const seriesShare = 0.7

func (g *gatherer) tolerance() error {
	if len(g.sheet.Study.Tolerances) == 0 {
		return nil
	}
	found, err := engine.Tolerance(g.ctx, g.sheet.Study, engine.ToleranceOptions{
		Candidate: g.sheet.Candidate, Cars: g.options.Cars, Progress: engine.Part(g.options.Progress, 0, seriesShare),
	})
	if e := (*engine.Error)(nil); errors.As(err, &e) && e.Key == "cars" && g.options.Cars != nil {
		return err // the caller's own, which no sheet leaves out
	}
	if err == nil {
		err = g.ctx.Err() // a series cut short is no verdict
	}
	if err != nil {
		return g.omit("tolerances", err)
	}
	g.sheet.Tolerance = found
	return nil
}

// fit finds the car that the readings came from, on which the candidate is to stand.
func (g *gatherer) fit() error {
	if len(g.sheet.Study.Readings) == 0 {
		return nil
	}
	found, err := engine.Fit(g.ctx, g.sheet.Study, engine.FitOptions{Progress: engine.Part(g.options.Progress, seriesShare, 1)})
	if err != nil {
		return g.omit("readings", err)
	}
	g.sheet.Fit = found
	return nil
}

// omit notes why a part of the sheet is missing. An error of the context ends the
// sheet.
func (g *gatherer) omit(what string, err error) error {
	var e *engine.Error
	if !errors.As(err, &e) {
		return err
	}
	g.sheet.Omitted = append(g.sheet.Omitted, what+": "+study.Spoken(engine.InUnits(e, g.sheet.Study).Error()))
	return nil
}
