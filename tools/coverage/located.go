package main

import (
	"context"
	"io"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// locatedCars is an experiment with cars that are taped: a job is a template's car, what
// was measured of it, and a slip.
type locatedCars struct {
	// cars of each template by the form; an eighth of that by each scheme, and a
	// thirty-second without slips.
	Cars int    `json:"jobs"`
	Seed uint64 `json:"seed"`
}

// locatedFindings are what became of the jobs, in tables.
type locatedFindings struct {
	all     tapeOutcome
	kinds   []tapeOutcome // by template, by the form
	slips   []tapeOutcome // by slip, by the form
	schemes []tapeOutcome // by scheme, all templates
	cars    []tapeOutcome // by template and scheme, without slips and marks off
}

// Streams of located cars keep the generators of the tables apart.
const (
	formStream     = 0
	schemeStream   = 1
	carStream      = 2
	locatedStreams = 3
)

// locatedJob is one job of the experiment, and the rows of the tables that it counts in.
type locatedJob struct {
	doc    *study.Document
	scheme int
	slip   int
	markSD float64
	seed   uint64
	number int
	rows   []*tapeOutcome
}

// newLocatedFindings returns findings of no jobs.
func newLocatedFindings() *locatedFindings {
	return &locatedFindings{
		kinds: make([]tapeOutcome, len(study.Templates())), slips: make([]tapeOutcome, len(tapeSlips)),
		schemes: make([]tapeOutcome, len(tapeSchemes)),
		cars:    make([]tapeOutcome, len(study.Templates())*len(tapeSchemes)),
	}
}

// simulation is the experiment; each job has its own generator.
func (e locatedCars) simulation() *simulation[tapeOutcome] {
	jobs := e.jobs(newLocatedFindings())
	return &simulation[tapeOutcome]{
		of: e, size: len(jobs),
		one: func(ctx context.Context, i int) (tapeOutcome, error) {
			j := &jobs[i]
			t := newTapeJob(j.doc, &tapeSchemes[j.scheme], j.seed, j.number, j.markSD)
			tapeSlips[j.slip].spoil(t)
			return t.locate(ctx)
		},
		page: func(w io.Writer, all []tapeOutcome) (bool, error) { return writeLocated(w, e, e.findings(all)) },
	}
}

// run simulates all jobs on all processors.
func (e locatedCars) run(ctx context.Context) (*locatedFindings, error) {
	all, err := e.simulation().do(ctx, engine.Whole)
	if err != nil {
		return nil, err
	}
	return e.findings(all), nil
}

// findings counts the outcomes of all jobs.
func (e locatedCars) findings(all []tapeOutcome) *locatedFindings {
	f := newLocatedFindings()
	for i, j := range e.jobs(f) {
		for _, row := range j.rows {
			row.join(all[i])
		}
	}
	return f
}

// jobs lists the jobs of all tables. Slips go by turns, and so do marks that are exact and
// that are off by 1 mm.
func (e locatedCars) jobs(f *locatedFindings) (list []locatedJob) {
	for i, t := range study.Templates() {
		doc := t.Document()
		add := func(stream uint64, scheme, n int, markSD float64, slip int, rows ...*tapeOutcome) {
			list = append(list, locatedJob{
				doc: doc, scheme: scheme, slip: slip, markSD: markSD,
				seed: locatedStreams*e.Seed + stream, number: carsOfLocated*(scheme+len(tapeSchemes)*i) + n, rows: rows,
			})
		}
		for n := range e.Cars {
			slip := (n + i) % len(tapeSlips)
			add(formStream, 0, n, float64(n%2), slip, &f.all, &f.kinds[i], &f.slips[slip])
		}
		for scheme := range tapeSchemes {
			for n := range (e.Cars + 7) / 8 {
				slip := 0
				if tapeSchemes[scheme].marks > 0 {
					slip = (n + i) % len(tapeSlips)
				}
				add(schemeStream, scheme, n, float64(n%2), slip, &f.schemes[scheme])
			}
			for n := range (e.Cars + 31) / 32 {
				add(carStream, scheme, n, 0, 0, &f.cars[scheme+len(tapeSchemes)*i])
			}
		}
	}
	return list
}

// carsOfLocated keeps the generators of the rows apart.
const carsOfLocated = 1 << 20
