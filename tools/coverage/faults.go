package main

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"

	"toewright/optimize"
)

// fault is something that goes wrong at the gauge, and what a user can do about it.
type fault struct {
	name string
	off  conditions // the sign of its size is drawn
	// slip is by how much one reading of the last run is off, mm.
	slip float64
	// rough says that the hardpoints are those of another car, and no priors stated.
	rough bool
	// remedy says what frees the unknown, or sees it; empty where nothing does.
	remedy string
	itself bool // the fit does that by itself
	tell   func(context.Context, *session, conditions) error
}

// Sizes of the faults.
const (
	leanFault   = 0.1 / 50 // mm of reading by mm of travel
	scaleFault  = 0.01
	playFault   = 0.1  // mm on the gauge, from one hand of the play to the other
	travelFault = 1.0  // mm
	slipFault   = 1.0  // mm
	roughFault  = 15.0 // mm
)

// usualSlope is what a fit allows a gauge to lean where nothing is stated.
const usualSlope = 0.0015

// freeSlope lets the gauge lean.
func freeSlope(_ context.Context, s *session, _ conditions) error {
	s.fit.Sets = slices.Clone(s.fit.Sets)
	for i := range s.fit.Sets {
		s.fit.Sets[i].SlopeSD = usualSlope
	}
	return nil
}

func freeTravel(_ context.Context, s *session, _ conditions) error {
	s.fit.TravelZero = travelFault
	return nil
}

func widen(ctx context.Context, s *session, _ conditions) error {
	s.fit.Priors = nil
	_, err := s.fit.WidenPriors(ctx)
	return err
}

func nothingToDo(context.Context, *session, conditions) error { return nil }

var faults = []fault{
	{name: "none", itself: true, remedy: "`slopeSd` by default", tell: freeSlope},
	{name: fmt.Sprintf("the gauge leans, %g mm by mm of travel", leanFault), off: conditions{slope: leanFault}, itself: true, remedy: "`slopeSd` by default", tell: freeSlope},
	{name: fmt.Sprintf("scale off by %g %%", 100*scaleFault), off: conditions{scale: scaleFault}},
	{name: fmt.Sprintf("play of %g mm, one run outward from the static height", playFault), off: conditions{play: playFault},
		remedy: "read into bump and back into droop", tell: measureBothWays},
	{name: fmt.Sprintf("travel read %g mm off", travelFault), off: conditions{travelZero: travelFault}, remedy: "a prior of `travelZero`", tell: freeTravel},
	{name: fmt.Sprintf("one reading %g mm off", slipFault), slip: slipFault, itself: true, remedy: "left out by itself", tell: nothingToDo},
	{name: fmt.Sprintf("hardpoints of another car, %g mm off, no priors stated", roughFault), rough: true, itself: true, remedy: "priors widened by itself", tell: widen},
}

// faultsSeed keeps the generators of the faults apart from those of the streams.
const faultsSeed = 1 << 40

// faulty is what came of one car by fault: with the fit not told of it, and told.
type faulty [][2]outcome

// tryFaults simulates car number n of a kind with each fault at two stacks.
func (k *kindOfCar) tryFaults(ctx context.Context, seed uint64, n int) (faulty, error) {
	taped, err := k.newSession(ctx, seed, n, tapedSD)
	if err != nil {
		return nil, err
	}
	rough, err := k.newSession(ctx, seed, n, roughFault)
	if err != nil {
		return nil, err
	}
	out := make(faulty, len(faults))
	for i := range faults {
		s := *taped
		if faults[i].rough {
			s = *rough
			s.fit.Priors = taped.fit.Priors // those by default
		}
		if out[i], err = s.tryFault(ctx, &faults[i]); err != nil {
			return nil, err
		}
	}
	return out, nil
}

func (s *session) tryFault(ctx context.Context, f *fault) (out [2]outcome, err error) {
	off := f.off.signed(math.Copysign(1, s.r.Float64()-0.5))
	for _, height := range []float64{0, zerosStack} {
		if err := s.measure(height, off); err != nil {
			return out, err
		}
	}
	if f.slip > 0 {
		s.slip(f.slip)
	}
	_, _, out[0] = s.advise(ctx)
	if f.remedy == "" {
		return out, nil
	}
	if err := f.tell(ctx, s, off); err != nil {
		return out, err
	}
	_, _, out[1] = s.advise(ctx)
	return out, nil
}

// signed returns conditions with the sizes of the gauge's own faults times a sign.
func (c conditions) signed(sign float64) conditions {
	return conditions{travelZero: sign * c.travelZero, steerZero: sign * c.steerZero, slope: sign * c.slope, scale: sign * c.scale, play: sign * c.play}
}

// slip puts one reading of the last run off.
func (s *session) slip(size float64) {
	last := &s.fit.Sets[len(s.fit.Sets)-1]
	i := s.r.IntN(len(last.Readings))
	last.Readings[i].Value += math.Copysign(size, s.r.Float64()-0.5)
}

// measureBothWays reads the two stacks anew, the whole way into bump and the whole way
// back: the play then lies to one hand in each run.
func measureBothWays(_ context.Context, s *session, off conditions) error {
	s.fit.Sets = nil
	for _, height := range []float64{0, zerosStack} {
		for _, way := range []optimize.RunDirection{optimize.BumpRun, optimize.DroopRun} {
			off.run = way
			if err := s.measure(height, off); err != nil {
				return err
			}
		}
	}
	return nil
}

// trusted is the least share, percent, of bands of 90 % that must hold for advice to be
// trusted.
const trusted = 85.0

func writeFaults(b *strings.Builder, e experiment, total *findings) {
	fmt.Fprintf(b, "\n## Faults of the gauge, and where advice may not be trusted\n\n"+
		"%d cars of each template, hardpoints by tape unless said otherwise, stacks of 0 and %g mm, all templates\n"+
		"together. Each fault has the size stated, its sign by chance. *Unsaid* are bands that miss though the\n"+
		"verdict is that the readings are explained. Advice may be trusted where 85 of 100 bands hold; *only if told*\n"+
		"means that the study must state the fault, or the gauge be read so that it shows.\n\n"+
		"| Fault | Cars | Not told: band holds | unsaid | worst | Told by | Band holds | within 0.75 mm | width | Trust |\n"+
		"| --- | --: | --: | --: | --: | --- | --: | --: | --: | --- |\n", e.faultCars(), zerosStack)
	for i := range faults {
		f, held, freed := &faults[i], &total.faults[i][0], &total.faults[i][1]
		fmt.Fprintf(b, "| %s | %d | %.1f %% | %.1f %% | %.2f mm ", f.name, held.cars, held.coverage(), held.percent(held.unsaid), held.worst)
		if f.remedy == "" {
			fmt.Fprintf(b, "| nothing | | | | %s |\n", f.trust(held, nil))
			continue
		}
		fmt.Fprintf(b, "| %s | %.1f %% | %.1f %% | %.2f mm | %s |\n", f.remedy, freed.coverage(), freed.withinPercent(0.75), freed.meanWidth(), f.trust(held, freed))
	}
}

// trust says whether advice may be trusted with the fault.
func (f *fault) trust(held, freed *tally) string {
	switch {
	case freed == nil && held.coverage() < trusted:
		return "**the band is too narrow**"
	case freed == nil:
		return "yes"
	case freed.coverage() < trusted:
		return "**not**"
	case held.coverage() < trusted && !f.itself:
		return "only if told"
	}
	return "yes"
}
