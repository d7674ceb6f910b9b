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
	Jobs              int
	Coordinates, Held int     // settled ones, and those whose 90 % band holds the true one
	Ends, EndsHeld    int     // toe at the ends of the window
	ToeSD             float64 // sum over the ends, degrees
	Slips, Named      int
	Either            int     // slips named as what may be wrong in another measure's place
	Left              int     // sound measures left out
	Spoilt            int     // jobs with such
	Worst             float64 // miss of a settled coordinate, mm
	Lost              int     // jobs that land elsewhere: a coordinate is off by many standard deviations
}

// Half of a 90 % band, and how far off no sound location is, in standard deviations.
const (
	bandSD = 1.6448536269514722
	lostSD = 8
)

// locate solves a job and compares it with the truth.
func (j *tapeJob) locate(ctx context.Context) (o tapeOutcome, err error) {
	none := 0
	o.Jobs = 1
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
			o.Coordinates++
			if miss <= bandSD*got.SD[k] {
				o.Held++
			}
			o.Worst = max(o.Worst, j.truth.Units.Millimetres(miss))
			worst = max(worst, miss/got.SD[k])
		}
	}
	if worst > lostSD {
		o.Lost = 1
	}
	o.Slips = len(j.slipped)
	for _, slip := range j.slipped {
		one := func(out engine.TapeOutlierResult) bool { return out.Measure == slip }
		either := func(out engine.TapeOutlierResult) bool { return slices.ContainsFunc(out.Or, one) }
		switch {
		case slices.ContainsFunc(l.Outliers, one):
			o.Named++
		case slices.ContainsFunc(l.Outliers, either):
			o.Either++
		}
	}
	if o.Left = len(l.Outliers) - o.Named; o.Left > 0 {
		o.Spoilt = 1
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
		for i, end := range [2]engine.ToeEnd{toe.Bump, toe.Droop} {
			travel := [2]float64{w.Bump, -w.Droop}[i]
			if _, ok := at[travel]; !ok || travel == 0 {
				continue
			}
			o.Ends++
			o.ToeSD += float64(end.SD)
			if math.Abs(float64(end.Value)-(at[travel]-at[0])) <= bandSD*float64(end.SD) {
				o.EndsHeld++
			}
		}
	}
	return nil
}

// join adds another outcome.
func (o *tapeOutcome) join(a tapeOutcome) {
	o.Jobs += a.Jobs
	o.Coordinates += a.Coordinates
	o.Held += a.Held
	o.Ends += a.Ends
	o.EndsHeld += a.EndsHeld
	o.ToeSD += a.ToeSD
	o.Slips += a.Slips
	o.Named += a.Named
	o.Either += a.Either
	o.Left += a.Left
	o.Spoilt += a.Spoilt
	o.Lost += a.Lost
	o.Worst = max(o.Worst, a.Worst)
}

// percent returns a share of a number.
func percent(part, whole int) float64 { return 100 * float64(part) / float64(whole) }

// coverage returns the share of coordinates held by their band, percent.
func (o *tapeOutcome) coverage() float64 { return percent(o.Held, o.Coordinates) }

// toeCoverage returns the share of toe changes held by their band, percent.
func (o *tapeOutcome) toeCoverage() float64 { return percent(o.EndsHeld, o.Ends) }

// namedShare returns the share of the slips that are named, percent: as what is wrong, or as
// one of those of which one is.
func (o *tapeOutcome) namedShare() float64 { return percent(o.Named+o.Either, o.Slips) }
