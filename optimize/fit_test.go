package optimize_test

import (
	"context"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"toewright/optimize"
	"toewright/solver"
)

// A fitCase is a simulated car of testdata/cases with its true best: readings and
// optimum come from an independent kinematics.
type fitCase struct {
	Study struct {
		Travel   struct{ Bump, Droop, Step float64 }
		Readings []struct {
			Side, Gauge         string
			Base, Repeatability float64
			Changes             map[string]float64
			Values              [][2]float64
		}
		Priors []struct {
			Parameter string
			SD        float64
		}
		Advise struct {
			Parameter      string
			Step, Min, Max float64
		}
	}
	TrueBest, TrueBestRMS float64
	TrueToeAtZero         []float64
}

func loadFitCase(t testing.TB, name string) (*optimize.GaugeFit, *fitCase) {
	t.Helper()
	base, _ := loadSearchCase(t, name)
	b, err := os.ReadFile(filepath.Join("../testdata/cases", name))
	if err != nil {
		t.Fatal(err)
	}
	var c fitCase
	if err := json.Unmarshal(b, &c); err != nil {
		t.Fatal(err)
	}
	p := &optimize.GaugeFit{Base: base}
	for _, r := range c.Study.Readings {
		s := optimize.ReadingSet{Base: r.Base, Repeatability: r.Repeatability}
		if s.Gauge, err = optimize.ParseGauge(r.Gauge); err != nil {
			t.Fatal(err)
		}
		for key, v := range r.Changes {
			s.Changes = append(s.Changes, changeOf(t, base, key, v))
		}
		for _, v := range r.Values {
			s.Readings = append(s.Readings, optimize.Reading{Travel: v[0], Value: v[1]})
		}
		p.Sets = append(p.Sets, s)
	}
	for _, q := range c.Study.Priors {
		k, sides, err := solver.FindParameter(base.Design(), q.Parameter)
		if err != nil {
			t.Fatal(err)
		}
		p.Priors = append(p.Priors, optimize.FitPrior{Parameter: k, Sides: sides, SD: q.SD})
	}
	return p, &c
}

func changeOf(t testing.TB, base *solver.Assembler, key string, v float64) solver.Change {
	t.Helper()
	c, err := solver.NewChange(base.Design(), key, v)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// request asks for the advice of a case.
func (c *fitCase) request(t testing.TB, base *solver.Assembler) *optimize.AdviceRequest {
	t.Helper()
	a := c.Study.Advise
	q := &optimize.AdviceRequest{Step: a.Step, Min: a.Min, Max: a.Max}
	var err error
	if q.Parameter, q.Sides, err = solver.FindParameter(base.Design(), a.Parameter); err != nil {
		t.Fatal(err)
	}
	w := c.Study.Travel
	if q.Window.Travels, err = solver.Grid(w.Bump, w.Droop, w.Step); err != nil {
		t.Fatal(err)
	}
	return q
}

func fitCar(t testing.TB, p *optimize.GaugeFit) *optimize.FittedCar {
	t.Helper()
	f, err := optimize.FitCar(context.Background(), p)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func adviceOf(t testing.TB, f *optimize.FittedCar, q *optimize.AdviceRequest) *optimize.Advice {
	t.Helper()
	as, err := f.Advise(q)
	if err != nil {
		t.Fatal(err)
	}
	if len(as) == 0 {
		t.Fatal("no advice")
	}
	return as[0]
}

// TestFitSimulatedCars explains the readings of simulated cars and predicts their
// true toe better than any of its readings.
func TestFitSimulatedCars(t *testing.T) {
	for _, name := range []string{"fit01.json", "fit02.json"} {
		p, c := loadFitCase(t, name)
		f := fitCar(t, p)
		if f.Status.Early() || f.Verdict() != optimize.Explained || len(f.Outliers) != 0 {
			t.Errorf("%s: status %v, chance %.3f, outliers %v, want an explained fit of all readings", name, f.Status, f.Chance(), f.Outliers)
		}
		if want := 2*len(p.Sets[0].Readings) - 2; f.Freedom != want {
			t.Errorf("%s: %d degrees of freedom, want %d", name, f.Freedom, want)
		}
		q := c.request(t, p.Base)
		got, err := f.Predict(&optimize.Judge{Travels: q.Window.Travels, Sides: solver.LeftOnly}, nil)
		if err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		home := c.TrueToeAtZero[len(c.TrueToeAtZero)/2]
		for i, toe := range c.TrueToeAtZero {
			e := 300 * float64(got.Change[i]-solver.Deg(toe-home))
			sum += e * e
		}
		if rms := math.Sqrt(sum / float64(len(c.TrueToeAtZero))); !(rms < 0.05) {
			t.Errorf("%s: the fitted curve is off by %.4f mm on the gauge, want less than its noise of 0.05", name, rms)
		}
	}
}

// truth is a car whose hardpoints are other than filed, and what it is read with.
type truth struct {
	base *solver.Assembler
	off  []solver.Change
	r    *rand.Rand
}

// newTruth returns the textbook's car with every coordinate of its left side off
// by a normal error of the given standard deviation, mm.
func newTruth(t testing.TB, seed uint64, sd float64) *truth {
	t.Helper()
	c := &truth{base: textbook(t), r: rand.New(rand.NewPCG(seed, 4))}
	for _, p := range solver.Parameters(c.base.Design()) {
		if p.Coordinate() {
			c.off = append(c.off, solver.Change{Parameter: p, Sides: solver.LeftOnly, Value: sd * c.r.NormFloat64()})
		}
	}
	return c
}

// noise is the standard deviation of the simulated gauge, mm on a base of 300.
const noise = 0.05

// read returns readings of the left wheel with parts fitted.
func (c *truth) read(t testing.TB, noise float64, parts []solver.Change, travels ...float64) optimize.ReadingSet {
	t.Helper()
	x, err := c.base.Assemble(append(slices.Clone(parts), c.off...), solver.HoldAll)
	if err != nil {
		t.Fatal(err)
	}
	var curves [2]solver.Curve
	if err := x.Sweep(solver.NewWorkspace(), &solver.SweepInput{Travels: travels}, &curves); err != nil {
		t.Fatal(err)
	}
	s := optimize.ReadingSet{Base: 300, Repeatability: 0.05, Changes: parts}
	for _, at := range curves[solver.Left].Positions {
		v := 4.2 + s.Gauge.Reading(at.Toe, s.Base) + noise*c.r.NormFloat64()
		s.Readings = append(s.Readings, optimize.Reading{Travel: at.Travel, Value: v})
	}
	return s
}

// grid is the window of most tests, mm.
var grid = []float64{-50, -40, -30, -20, -10, 0, 10, 20, 30, 40, 50}

// twoStacks returns a fit to readings with no spacers and with 6 mm of them.
func (c *truth) twoStacks(t testing.TB, noise float64) *optimize.GaugeFit {
	t.Helper()
	return &optimize.GaugeFit{Base: c.base, Sets: []optimize.ReadingSet{
		c.read(t, noise, nil, grid...),
		c.read(t, noise, []solver.Change{changeOf(t, c.base, "tieRodOuterHeight", -6)}, grid...),
	}}
}

// TestFitInAnyUnitOfTheGauge: base, readings and repeatability in metres in place of
// millimetres are the same toe.
func TestFitInAnyUnitOfTheGauge(t *testing.T) {
	p := newTruth(t, 17, 2.5).twoStacks(t, noise)
	want := fitCar(t, p)
	for i := range p.Sets {
		s := &p.Sets[i]
		s.Base, s.Repeatability, s.Readings = s.Base/1000, s.Repeatability/1000, slices.Clone(s.Readings)
		for k := range s.Readings {
			s.Readings[k].Value /= 1000
		}
	}
	got := fitCar(t, p)
	for k := range want.Values {
		if !(math.Abs(got.Values[k]-want.Values[k]) <= 1e-6) {
			t.Errorf("%s = %.9f, want %.9f mm as with the base in mm", want.Unknowns[k].Key(), got.Values[k], want.Values[k])
		}
	}
}

// TestFitPublishedShift recovers the toe curve of the textbook's car with both
// tie rod balls moved, and what moved them: the inner by 1.5 mm outboard and 2 mm
// up, the outer by 1.5 mm down. Curve computed by two independent programs.
func TestFitPublishedShift(t *testing.T) {
	toes := []float64{-0.536847493, -0.428510710, -0.329754517, -0.238783539, -0.154199525, -0.074898554, 0,
		0.071203921, 0.139284850, 0.204705526, 0.267840380, 0.328991383, 0.388400416}
	base := textbook(t)
	s := optimize.ReadingSet{Gauge: optimize.Plate, Base: 381, Repeatability: 1e-4}
	for i, toe := range toes {
		s.Readings = append(s.Readings, optimize.Reading{Travel: float64(10*i - 60), Value: 2 + s.Gauge.Reading(solver.Deg(toe), s.Base)})
	}
	p := &optimize.GaugeFit{Base: base, Sets: []optimize.ReadingSet{s}}
	for _, key := range []string{"tieRodInner.y", "tieRodInner.z", "tieRodOuter.z"} {
		k, _, err := solver.FindParameter(base.Design(), key)
		if err != nil {
			t.Fatal(err)
		}
		p.Priors = append(p.Priors, optimize.FitPrior{Parameter: k, SD: 1000})
	}
	f := fitCar(t, p)
	// The curve has nine decimals of a degree, some 1e-9 mm on the plate, which
	// the near collinearity of both heights magnifies.
	for k, want := range []float64{1.5, 2, -1.5} {
		if !(math.Abs(f.Values[k]-want) <= 1e-3) {
			t.Errorf("%s = %.6f, want %g", f.Unknowns[k].Key(), f.Values[k], want)
		}
	}
	if got := f.Zeros[0]; !(math.Abs(got-2) <= 1e-6) {
		t.Errorf("zero of the gauge = %.8f, want 2", got)
	}
	if height := math.Sqrt(f.Covariance.At(1, 1) + f.Covariance.At(2, 2) - 2*f.Covariance.At(1, 2)); !(height < 0.1*f.SD(1)) {
		t.Errorf("difference of both heights has standard deviation %.3g mm beside %.3g of one, want it settled", height, f.SD(1))
	}
}

// TestFitSidesApart fits two sides together as each by itself.
func TestFitSidesApart(t *testing.T) {
	c := newTruth(t, 3, 2.5)
	left := c.read(t, noise, nil, grid...)
	right := c.read(t, noise, nil, grid...)
	right.Side = solver.Right
	both := fitCar(t, &optimize.GaugeFit{Base: c.base, Sets: []optimize.ReadingSet{left, right}})
	alone := fitCar(t, &optimize.GaugeFit{Base: c.base, Sets: []optimize.ReadingSet{left}})
	for k := range alone.Unknowns {
		i := slices.IndexFunc(both.Unknowns, func(u optimize.Unknown) bool { return u.Key() == alone.Unknowns[k].Key() })
		if got, want := both.Values[i], alone.Values[k]; !(math.Abs(got-want) <= 1e-6) {
			t.Errorf("%s = %.9f with the right side, %.9f without", alone.Unknowns[k].Key(), got, want)
		}
	}
}

// TestFitFreedZeros finds how far the travels' zero was off, which a curve of the
// toe shows only as far as it bends, and says how well.
func TestFitFreedZeros(t *testing.T) {
	c := newTruth(t, 5, 2.5)
	p := c.twoStacks(t, noise)
	const low = 3
	for i := range p.Sets {
		for k := range p.Sets[i].Readings {
			p.Sets[i].Readings[k].Travel -= low
		}
	}
	p.TravelZero = 4
	f := fitCar(t, p)
	k := len(f.Unknowns) - 1
	if f.Unknowns[k].Key() != "travelZero@left" {
		t.Fatalf("last unknown is %s, want travelZero@left", f.Unknowns[k].Key())
	}
	if off := math.Abs(f.Values[k] - low); !(off <= 3*f.SD(k)) || !(f.SD(k) < 4) {
		t.Errorf("travel zero = %.3f ± %.3f, want %d and less spread than before", f.Values[k], f.SD(k), low)
	}
}

func TestFitVerdict(t *testing.T) {
	c := newTruth(t, 7, 2.5)
	for _, tt := range []struct {
		name  string
		noise float64
		want  optimize.Verdict
	}{
		{"as stated", noise, optimize.Explained},
		{"far noisier", 8 * noise, optimize.NotExplained},
		{"without noise", 0, optimize.TooGood},
	} {
		if f := fitCar(t, c.twoStacks(t, tt.noise)); f.Verdict() != tt.want {
			t.Errorf("%s: chi-square %.1f of %d has verdict %d, want %d", tt.name, f.ChiSquare, f.Freedom, f.Verdict(), tt.want)
		}
	}
}

func TestFitErrors(t *testing.T) {
	base := textbook(t)
	sound := optimize.ReadingSet{Base: 300, Repeatability: 0.05, Readings: []optimize.Reading{{-10, 0}, {10, 0.2}}}
	changed := func(change func(*optimize.ReadingSet)) []optimize.ReadingSet {
		s := sound
		s.Readings = slices.Clone(sound.Readings)
		change(&s)
		return []optimize.ReadingSet{s}
	}
	for _, tt := range []struct {
		name, want string
		fit        optimize.GaugeFit
	}{
		{"no readings", "no readings", optimize.GaugeFit{}},
		{"no base", "readings 1 (left): base is 0 mm", optimize.GaugeFit{Sets: changed(func(s *optimize.ReadingSet) { s.Base = 0 })}},
		{"no repeatability", "repeatability is 0 mm", optimize.GaugeFit{Sets: changed(func(s *optimize.ReadingSet) { s.Repeatability = 0 })}},
		{"one reading", "has 1 readings, needs 2", optimize.GaugeFit{Sets: changed(func(s *optimize.ReadingSet) { s.Readings = s.Readings[:1] })}},
		{"no number", "reading 2 is not a number", optimize.GaugeFit{Sets: changed(func(s *optimize.ReadingSet) { s.Readings[1].Value = math.NaN() })}},
		{"too much travel", "the left side locks at", optimize.GaugeFit{Sets: changed(func(s *optimize.ReadingSet) { s.Readings[1].Travel = 2000 })}},
		{"no spread", "prior of tieRodOuter.z has standard deviation 0", optimize.GaugeFit{Sets: []optimize.ReadingSet{sound},
			Priors: []optimize.FitPrior{{Parameter: changeOf(t, base, "tieRodOuter.z", 0).Parameter}}}},
		{"other side", "no prior applies", optimize.GaugeFit{Sets: []optimize.ReadingSet{sound},
			Priors: []optimize.FitPrior{{Parameter: changeOf(t, base, "tieRodOuter.z", 0).Parameter, Sides: solver.RightOnly, SD: 1}}}},
		{"negative zero", "prior of travelZero", optimize.GaugeFit{Sets: []optimize.ReadingSet{sound}, TravelZero: -1}},
		{"nothing to steer", "nothing steers this axle", optimize.GaugeFit{Sets: []optimize.ReadingSet{sound}, SteerZero: 1, Base: unsteered(t)}},
	} {
		if tt.fit.Base == nil {
			tt.fit.Base = base
		}
		_, err := optimize.FitCar(context.Background(), &tt.fit)
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: error %v, want one that says %q", tt.name, err, tt.want)
		}
	}
}

// unsteered returns the textbook's car with its tie rods fixed to the body.
func unsteered(t testing.TB) *solver.Assembler {
	t.Helper()
	d := *textbook(t).Design()
	d.Gear = solver.Gear{}
	a, err := solver.NewAssembler(&d)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestFitCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if f, err := optimize.FitCar(ctx, newTruth(t, 1, 2.5).twoStacks(t, noise)); err == nil {
		t.Errorf("a cancelled fit returned %v, want an error", f.Status)
	}
}

func BenchmarkFitCar(b *testing.B) {
	p, _ := loadFitCase(b, "fit01.json")
	b.ReportAllocs()
	for b.Loop() {
		fitCar(b, p)
	}
}
