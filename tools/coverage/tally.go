package main

import "math"

// tally counts outcomes.
type tally struct {
	cars, covered, failed int
	within                map[float64]int // by limit of the miss, mm
	width, curve          float64         // sums, mm
	worst                 float64         // miss, mm
	leftOut               int             // sound readings
	unsaid                int             // bands that miss though all is explained
}

// limits are those of the miss that are counted, mm.
var limits = []float64{0.75, 1, 1.5}

func (t *tally) add(o outcome) {
	t.cars++
	if o.Failed {
		t.failed++
		return
	}
	if t.within == nil {
		t.within = map[float64]int{}
	}
	if o.Covered {
		t.covered++
	} else if o.Explained {
		t.unsaid++
	}
	miss := math.Abs(o.Miss)
	for _, l := range limits {
		if miss <= l {
			t.within[l]++
		}
	}
	t.worst = math.Max(t.worst, miss)
	t.width += o.Width
	t.curve += o.Curve
	t.leftOut += o.Outliers
}

// join adds the counts of other cars.
func (t *tally) join(o *tally) {
	t.cars += o.cars
	t.covered += o.covered
	t.failed += o.failed
	t.width += o.width
	t.curve += o.curve
	t.leftOut += o.leftOut
	t.unsaid += o.unsaid
	t.worst = math.Max(t.worst, o.worst)
	if t.within == nil {
		t.within = map[float64]int{}
	}
	for l, n := range o.within {
		t.within[l] += n
	}
}

// percent returns a share of the cars; a car without advice is among them.
func (t *tally) percent(n int) float64 { return 100 * float64(n) / float64(t.cars) }

// coverage returns the percentage of the bands that hold the truth.
func (t *tally) coverage() float64 { return t.percent(t.covered) }

// withinPercent returns the percentage of advice within a limit.
func (t *tally) withinPercent(limit float64) float64 { return t.percent(t.within[limit]) }

// meanWidth returns the mean width of the bands, mm.
func (t *tally) meanWidth() float64 { return t.width / float64(t.cars-t.failed) }

// meanCurve returns the mean RMS error of the predicted curves, mm.
func (t *tally) meanCurve() float64 { return t.curve / float64(t.cars-t.failed) }

// findings are the counts of one template, or of all.
type findings struct {
	name                   string
	unusable               int
	one, two, spoilt       tally // hardpoints by tape
	roughOne, roughTwo     tally // from a rough template
	held, freed            tally // zeros off
	named, unmoved, spoils int
	faults                 [][2]tally // by fault; not told of it, and told
}

// movedLimit is the largest change of the advice by one gross error, mm.
const movedLimit = 0.3

func (f *findings) addTaped(s *stacks) {
	f.one.add(s.One)
	f.two.add(s.Two)
	f.spoilt.add(s.Spoilt)
	f.spoils++
	if s.Named {
		f.named++
	}
	if !s.Spoilt.Failed && s.Moved < movedLimit {
		f.unmoved++
	}
}

func (f *findings) addRough(s *stacks) {
	f.roughOne.add(s.One)
	f.roughTwo.add(s.Two)
}

func (f *findings) addZeros(z *zeros) {
	f.held.add(z.Held)
	f.freed.add(z.Freed)
}

func (f *findings) addFaults(r faulty) {
	f.reserveFaults()
	for i := range r {
		for told := range r[i] {
			f.faults[i][told].add(r[i][told])
		}
	}
}

func (f *findings) reserveFaults() {
	if f.faults == nil {
		f.faults = make([][2]tally, len(faults))
	}
}

// join adds the counts of another template.
func (f *findings) join(o *findings) {
	f.unusable += o.unusable
	f.named += o.named
	f.unmoved += o.unmoved
	f.spoils += o.spoils
	f.reserveFaults()
	for i := range o.faults {
		for told := range o.faults[i] {
			f.faults[i][told].join(&o.faults[i][told])
		}
	}
	for _, p := range []struct{ to, from *tally }{
		{&f.one, &o.one}, {&f.two, &o.two}, {&f.spoilt, &o.spoilt},
		{&f.roughOne, &o.roughOne}, {&f.roughTwo, &o.roughTwo},
		{&f.held, &o.held}, {&f.freed, &o.freed},
	} {
		p.to.join(p.from)
	}
}
