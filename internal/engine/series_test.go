package engine

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"toewright/internal/study"
	"toewright/solver"
)

// built is a series of simulated cars of a template: each is off by what is common to all,
// and by a chance of its own, and is read with a gauge that scatters, stands at a zero of its
// own and leans.
type built struct {
	t       *testing.T
	doc     *study.Document
	cars    *cars
	part    string
	scatter float64 // standard deviation of each coordinate of a car, mm
	rand    *rand.Rand
}

// newBuilt returns a template with one candidate, whose part the cars have.
func newBuilt(t *testing.T, template study.Template, seed uint64) *built {
	t.Helper()
	b := &built{t: t, doc: template.Document(), part: "tieRodOuterHeight", rand: rand.New(rand.NewPCG(seed, 1))}
	var err error
	if b.cars, err = newCars(b.doc); err != nil {
		t.Fatal(err)
	}
	if len(b.cars.design.Kind.CommonPoints) > 0 {
		b.part = "dragLinkOuterHeight"
	}
	d := b.doc
	d.Readings, d.Priors, d.Advise, d.Search, d.Measured, d.Series = nil, nil, nil, nil, nil, nil
	d.Candidates = []study.Candidate{{Name: "part", Changes: study.Changes{b.part: d.Units.FromMillimetres(-3)}}}
	d.Yield = &study.Yield{Limit: 3, Candidate: "part"}
	return b
}

// change returns a change by a key, mm.
func (b *built) change(key string, mm float64) solver.Change {
	c, err := solver.NewChange(b.cars.design, key, mm)
	if err != nil {
		b.t.Fatal(err)
	}
	return c
}

// add measures a car of the series that is off by what is common, over a share of the window.
func (b *built) add(sides []study.Side, share float64, common ...solver.Change) {
	b.t.Helper()
	d := b.doc
	off := append(slices.Clone(common), b.change(b.part, -3))
	for _, p := range solver.Parameters(b.cars.design) {
		if p.Coordinate() && !p.OfGear() && b.scatter > 0 {
			off = append(off, solver.Change{Parameter: p, Value: b.scatter * b.rand.NormFloat64()})
		}
	}
	car, err := b.cars.base.Assemble(off, solver.HoldAll)
	if err != nil {
		b.t.Fatal(err)
	}
	grid, err := newGrid(d.Window(), d.Units)
	if err != nil {
		b.t.Fatal(err)
	}
	var at []float64
	for i := -4; i <= 4; i++ {
		end := grid.mm[len(grid.mm)-1]
		if i < 0 {
			end = -grid.mm[0]
		}
		at = append(at, share*end*float64(i)/4)
	}
	var out [2]solver.Curve
	if err := car.Sweep(solver.NewWorkspace(), &solver.SweepInput{Travels: at, ToeOnly: true}, &out); err != nil {
		b.t.Fatal(err)
	}
	mm := d.Units.FromMillimetres
	m := study.MeasuredCar{Car: strings.Repeat("i", len(d.Series)+1)}
	for _, side := range sides {
		r := study.Reading{Side: side, Base: mm(400), Repeatability: mm(0.05), Changes: study.Changes{b.part: mm(-3)}}
		zero, slope := 3*b.rand.NormFloat64(), study.UsualSlopeSD*b.rand.NormFloat64()
		for _, p := range out[side.Solver()].Positions {
			v := zero + slope*p.Travel + 400*math.Tan(float64(p.Toe)) + 0.05*b.rand.NormFloat64()
			r.Values = append(r.Values, [2]float64{mm(p.Travel), mm(v)})
		}
		m.Readings = append(m.Readings, r)
	}
	d.Series = append(d.Series, m)
}

func (b *built) judge(o SeriesOptions) *SeriesResult {
	b.t.Helper()
	r, err := Series(context.Background(), b.doc, o)
	if err != nil {
		b.t.Fatal(err)
	}
	return r
}

var bothSides = []study.Side{study.Left, study.Right}

// TestSeriesFindsWhatIsCommon builds series of every suspension, in the template's units, with
// one dimension off on all cars: the fit over all of them holds it within three standard
// deviations, as it holds those that are not off, and points to it or to what cannot be told
// from it.
func TestSeriesFindsWhatIsCommon(t *testing.T) {
	const cars, off = 3, 2.0
	for i, template := range study.Templates() {
		b := newBuilt(t, template, uint64(i))
		b.scatter = 0.3
		key := strings.Replace(strings.Replace(b.part, "dragLinkOuterHeight", "dragLink.outer.z", 1), "Height", ".z", 1)
		for range cars {
			b.add(bothSides, 1, b.change(key, off))
		}
		r := b.judge(SeriesOptions{})
		for _, c := range r.Cars {
			if c.Verdict != SeriesPass {
				t.Errorf("%s: car %s is %s: %s", template.Key, c.Car, c.Verdict, c.Problem)
			}
		}
		for _, c := range r.Common {
			want := 0.0
			if bare, _, _ := strings.Cut(c.Parameter, "@"); bare == key {
				want = b.doc.Units.FromMillimetres(off)
			}
			if c.Parameter == key && !(c.Share > 0.75) {
				t.Errorf("%s: %s alone explains %.2f", template.Key, key, c.Share)
			}
			if !(math.Abs(c.Value-want) <= 3*c.SD) {
				t.Errorf("%s: %s is %.3f with sd %.3f, want %.3f", template.Key, c.Parameter, c.Value, c.SD, want)
			}
		}
		first, said := r.Common[0], r.Words[len(r.Words)-1]
		if p, _, err := solver.FindParameter(b.cars.design, first.Parameter); err != nil || !strings.Contains(said, "all cars point to one dimension: "+p.Label) {
			t.Errorf("%s: says %q, want %s in it (%v)", template.Key, said, p.Label, err)
		}
	}
}

// TestSeriesBandsHold builds many series of which two dimensions may be off on either side, by
// chance, with cars that differ: 90 % bands of what they have in common hold some nine of ten.
func TestSeriesBandsHold(t *testing.T) {
	held, of := 0, 0
	for seed := range uint64(30) {
		b := newBuilt(t, templateOf(t, []string{"double-wishbone-rack", "strut-centre-link"}[seed%2]), seed)
		b.doc.Priors = []study.Prior{}
		truth := map[string]float64{}
		var common []solver.Change
		for _, key := range []string{"steeringArmLength", "tieRodInnerHeight"} {
			b.doc.Priors = append(b.doc.Priors, study.Prior{Parameter: key, SD: b.doc.Units.FromMillimetres(1)})
			for _, side := range []string{"@left", "@right"} {
				mm := b.rand.NormFloat64()
				truth[key+side] = b.doc.Units.FromMillimetres(mm)
				common = append(common, b.change(key+side, mm))
			}
		}
		for range 4 {
			own := slices.Clone(common)
			for i := range own {
				own[i].Value += 0.25 * b.rand.NormFloat64()
			}
			b.add(bothSides, 1, own...)
		}
		r := b.judge(SeriesOptions{})
		for _, c := range r.Common {
			if want, ok := truth[c.Parameter]; ok {
				of++
				if math.Abs(c.Value-want) <= 1.645*c.SD {
					held++
				}
			}
		}
	}
	if share := float64(held) / float64(of); of != 120 || share < 0.8 || share > 0.98 {
		t.Errorf("90 %% bands hold %d of %d", held, of)
	}
}

func templateOf(t *testing.T, key string) study.Template {
	t.Helper()
	for _, template := range study.Templates() {
		if template.Key == key {
			return template
		}
	}
	t.Fatal(key)
	return study.Template{}
}

// TestSeriesPointsToOneSide has one dimension off on one side.
func TestSeriesPointsToOneSide(t *testing.T) {
	for _, key := range []string{"tieRodInnerLateral@left", "tieRodInnerHeight@right"} {
		b := newBuilt(t, templateOf(t, "double-wishbone-rack"), 3)
		for _, key := range []string{"steeringArmLength", "tieRodInnerHeight", "tieRodInnerLateral"} {
			b.doc.Priors = append(b.doc.Priors, study.Prior{Parameter: key, SD: 2})
		}
		for range 3 {
			b.add(bothSides, 1, b.change(key, 4))
		}
		r := b.judge(SeriesOptions{})
		if first := r.Common[0]; first.Parameter != key || !(math.Abs(first.Alone-4) < 1) || !(first.Share > 0.8) {
			t.Errorf("%s off by 4: points to %+v", key, first)
		}
	}
}

// TestSeriesVerdicts judges single cars.
func TestSeriesVerdicts(t *testing.T) {
	left, right := bothSides[:1], bothSides[1:]
	tests := []struct {
		name    string
		sides   []study.Side
		share   float64
		limit   float64
		spoil   func(*study.Document)
		verdict string
		problem string
	}{
		{"within", bothSides, 1, 3, nil, SeriesPass, ""},
		{"beyond", bothSides, 1, 0.01, nil, SeriesFail, ""},
		{"left alone", left, 1, 3, nil, SeriesOpen, "the right wheel was not read"},
		{"right alone", right, 1, 3, nil, SeriesOpen, "the left wheel was not read"},
		{"left alone, beyond", left, 1, 0.01, nil, SeriesFail, "the right wheel was not read"},
		{"half the window", bothSides, 0.5, 3, nil, SeriesOpen, "alone, and the window is"},
		{"without its part", bothSides, 1, 3, func(d *study.Document) {
			for i := range d.Series[0].Readings {
				d.Series[0].Readings[i].Changes = nil
			}
		}, SeriesOpen, `parts of the candidate "part" on`},
		{"beyond its reach", bothSides, 1, 3, func(d *study.Document) {
			for i := range d.Series[0].Readings {
				d.Series[0].Readings[i].Values[0][0] *= 20
			}
		}, SeriesOpen, "lock"},
		{"another car's", bothSides, 1, 3, func(d *study.Document) {
			for i := range d.Series[0].Readings {
				for k := range d.Series[0].Readings[i].Values {
					d.Series[0].Readings[i].Values[k][1] += d.Units.FromMillimetres(3 * math.Sin(float64(3*k)))
				}
			}
		}, SeriesOpen, "no car near the one stated"},
		{"no readings", bothSides, 1, 3, func(d *study.Document) {
			d.Series = append(d.Series, study.MeasuredCar{Car: "empty"})
			slices.Reverse(d.Series)
		}, SeriesOpen, "there are no readings to fit"},
		{"no limit", bothSides, 1, 3, func(d *study.Document) { d.Yield = nil }, "", ""},
	}
	for _, key := range []string{"strut-rack", "double-wishbone-centre-link", "solid-axle-rack"} {
		for i, tt := range tests {
			b := newBuilt(t, templateOf(t, key), uint64(i))
			b.doc.Priors = []study.Prior{{Parameter: b.part, SD: b.doc.Units.FromMillimetres(1)}}
			b.add(tt.sides, tt.share)
			if b.doc.Yield.Limit = tt.limit; tt.spoil != nil {
				tt.spoil(b.doc)
			}
			r := b.judge(SeriesOptions{})
			c := r.Cars[0]
			if c.Verdict != tt.verdict || (c.Problem == "") != (tt.problem == "") || !strings.Contains(c.Problem, tt.problem) {
				t.Errorf("%s, %s: %s %q, want %s %q", key, tt.name, c.Verdict, c.Problem, tt.verdict, tt.problem)
			}
			if judged := c.Verdict == SeriesPass || c.Verdict == SeriesFail; tt.name != "no readings" && judged != (r.Share != nil) {
				t.Errorf("%s, %s: share %+v", key, tt.name, r.Share)
			}
			if b.doc.Units == study.Inch && strings.Contains(c.Problem, " mm") {
				t.Errorf("%s, %s: mm in %q", key, tt.name, c.Problem)
			}
			if len(r.Common) > 0 || len(r.Words) == 0 {
				t.Errorf("%s, %s: one car has %v in common", key, tt.name, r.Common)
			}
		}
	}
}

// TestSeriesOfNothing refuses a study without one, and a limit that is none.
func TestSeriesOfNothing(t *testing.T) {
	b := newBuilt(t, templateOf(t, "strut-rack"), 1)
	_, err := Series(context.Background(), b.doc, SeriesOptions{})
	if err == nil || err.Error() != "series: no car of it was read; enter each car with its readings first" {
		t.Errorf("Series = %v", err)
	}
	b.add(bothSides, 1)
	if _, err := Series(context.Background(), b.doc, SeriesOptions{Limit: new(-1.0)}); err == nil || !strings.HasPrefix(err.Error(), "limit: ") {
		t.Errorf("limit of -1: %v", err)
	}
}

// TestSeriesCancelled ends a series at any of its moments: it says so, and gives no answer.
func TestSeriesCancelled(t *testing.T) {
	b := newBuilt(t, templateOf(t, "double-wishbone-rack"), 1)
	b.doc.Priors = []study.Prior{{Parameter: "tieRodOuterHeight", SD: 1}}
	for range 3 {
		b.add(bothSides, 1)
	}
	whole := &countedContext{Context: context.Background(), left: -1}
	if _, err := Series(whole, b.doc, SeriesOptions{}); err != nil {
		t.Fatal(err)
	}
	for range 30 {
		ctx := &countedContext{Context: context.Background(), left: 1 + b.rand.IntN(whole.asked)}
		if r, err := Series(ctx, b.doc, SeriesOptions{}); !isContext(err) || r != nil {
			t.Fatalf("cancelled when asked: %v, %v", r, err)
		}
	}
}

// countedContext ends when it is asked for the last time of so many; below 0 never.
type countedContext struct {
	context.Context
	left, asked int
	over        bool
}

func (c *countedContext) Err() error {
	c.asked++
	if c.left--; c.left == 0 {
		c.over = true
	}
	if c.over {
		return context.Canceled
	}
	return nil
}
