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
	if o.failed {
		t.failed++
		return
	}
	if t.within == nil {
		t.within = map[float64]int{}
	}
	if o.covered {
		t.covered++
	} else if o.explained {
		t.unsaid++
	}
	miss := math.Abs(o.miss)
	for _, l := range limits {
		if miss <= l {
			t.within[l]++
		}
	}
	t.worst = math.Max(t.worst, miss)
	t.width += o.width
	t.curve += o.curve
	t.leftOut += o.outliers
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
	f.one.add(s.one)
	f.two.add(s.two)
	f.spoilt.add(s.spoilt)
	f.spoils++
	if s.named {
		f.named++
	}
	if !s.spoilt.failed && s.moved < movedLimit {
		f.unmoved++
	}
}

func (f *findings) addRough(s *stacks) {
	f.roughOne.add(s.one)
	f.roughTwo.add(s.two)
}

func (f *findings) addZeros(z *zeros) {
	f.held.add(z.held)
	f.freed.add(z.freed)
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
