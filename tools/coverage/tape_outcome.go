package main

import (
	"context"
	"math"
	"slices"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// tapeOutcome is what became of a job.
type tapeOutcome struct {
	jobs              int
	coordinates, held int     // settled ones, and those whose 90 % band holds the true one
	ends, endsHeld    int     // toe at the ends of the window
	toeSD             float64 // sum over the ends, degrees
	slips, named      int
	either            int     // slips named as what may be wrong in another measure's place
	left              int     // sound measures left out
	spoilt            int     // jobs with such
	worst             float64 // miss of a settled coordinate, mm
	lost              int     // jobs that land elsewhere: a coordinate is off by many standard deviations
}

// Half of a 90 % band, and how far off no sound location is, in standard deviations.
const (
	bandSD = 1.6448536269514722
	lostSD = 8
)

// locate solves a job and compares it with the truth.
func (j *tapeJob) locate(ctx context.Context) (o tapeOutcome, err error) {
	none := 0
	o.jobs = 1
	l, err := engine.Locate(ctx, j.study, engine.LocateOptions{Measure: &none})
	if err != nil {
		return o, err
	}
	worst := 0.0
	for _, p := range j.truth.Points() {
		got := l.Points[j.truth.SourcePath(p)]
		if !got.Settled {
			continue
		}
		for k := range p.Place {
			miss := math.Abs(got.Value[k] - p.Place[k])
			o.coordinates++
			if miss <= bandSD*got.SD[k] {
				o.held++
			}
			o.worst = max(o.worst, j.truth.Units.Millimetres(miss))
			worst = max(worst, miss/got.SD[k])
		}
	}
	if worst > lostSD {
		o.lost = 1
	}
	o.slips = len(j.slipped)
	for _, slip := range j.slipped {
		one := func(out engine.TapeOutlierResult) bool { return out.Measure == slip }
		either := func(out engine.TapeOutlierResult) bool { return slices.ContainsFunc(out.Or, one) }
		switch {
		case slices.ContainsFunc(l.Outliers, one):
			o.named++
		case slices.ContainsFunc(l.Outliers, either):
			o.either++
		}
	}
	if o.left = len(l.Outliers) - o.named; o.left > 0 {
		o.spoilt = 1
	}
	return o, j.compareToe(ctx, l, &o)
}

// compareToe holds the toe at the window's ends against the true car's.
func (j *tapeJob) compareToe(ctx context.Context, l *engine.LocateResult, o *tapeOutcome) error {
	sweep, err := engine.Sweep(ctx, j.truth, engine.SweepOptions{})
	if err != nil {
		return nil // a car that cannot be built has no toe
	}
	w := j.truth.Window()
	for i := range sweep.Sweeps {
		s := &sweep.Sweeps[i]
		toe, ok := l.Toe[s.Side]
		if !ok || toe.Problem != "" || s.Candidate != study.BaseName {
			continue
		}
		at := map[float64]float64{}
		for _, p := range s.Positions {
			at[p.Travel] = float64(p.Toe)
		}
		for travel, end := range map[float64]engine.ToeEnd{w.Bump: toe.Bump, -w.Droop: toe.Droop} {
			if _, ok := at[travel]; !ok || travel == 0 {
				continue
			}
			o.ends++
			o.toeSD += float64(end.SD)
			if math.Abs(float64(end.Value)-(at[travel]-at[0])) <= bandSD*float64(end.SD) {
				o.endsHeld++
			}
		}
	}
	return nil
}

// join adds another outcome.
func (o *tapeOutcome) join(a tapeOutcome) {
	o.jobs += a.jobs
	o.coordinates += a.coordinates
	o.held += a.held
	o.ends += a.ends
	o.endsHeld += a.endsHeld
	o.toeSD += a.toeSD
	o.slips += a.slips
	o.named += a.named
	o.either += a.either
	o.left += a.left
	o.spoilt += a.spoilt
	o.lost += a.lost
	o.worst = max(o.worst, a.worst)
}

// percent returns a share of a number.
func percent(part, whole int) float64 { return 100 * float64(part) / float64(whole) }

// coverage returns the share of coordinates held by their band, percent.
func (o *tapeOutcome) coverage() float64 { return percent(o.held, o.coordinates) }

// toeCoverage returns the share of toe changes held by their band, percent.
func (o *tapeOutcome) toeCoverage() float64 { return percent(o.endsHeld, o.ends) }

// namedShare returns the share of the slips that are named, percent: as what is wrong, or as
// one of those of which one is.
func (o *tapeOutcome) namedShare() float64 { return percent(o.named+o.either, o.slips) }
