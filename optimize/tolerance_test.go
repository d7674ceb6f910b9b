package optimize_test

import (
	"context"
	"math"
	"reflect"
	"strings"
	"testing"

	"toewright/optimize"
	"toewright/solver"
)

// textbookSeries has every coordinate but the wheel centre's off by 0.5 mm, one
// standard deviation, normal.
func textbookSeries(t testing.TB) *optimize.Series {
	t.Helper()
	s := &optimize.Series{Judge: optimize.Judge{Base: textbook(t), Hold: solver.HoldAll, Sides: solver.LeftOnly}, Seed: 1}
	var err error
	if s.Travels, err = solver.Grid(50, 50, 10); err != nil {
		t.Fatal(err)
	}
	for _, p := range solver.Parameters(s.Base.Design()) {
		if strings.Contains(p.Key, ".") && !strings.HasPrefix(p.Key, "wheelCentre") {
			s.Tolerances = append(s.Tolerances, optimize.Tolerance{Parameter: p, Distribution: optimize.Distribution{Spread: 0.5}})
		}
	}
	return s
}

// TestPropagateTextbook: u = 0.5 mm on all 24 coordinates of the textbook's
// linkage gives 0.062122 deg at -50 mm and 0.049604 deg at +50 mm (recomputed by
// central differences of independent solvers).
func TestPropagateTextbook(t *testing.T) {
	p, err := textbookSeries(t).Propagate()
	if err != nil {
		t.Fatal(err)
	}
	if n := len(p.Errors); n != 24 {
		t.Fatalf("%d quantities, want 24", n)
	}
	for _, tt := range []struct {
		name string
		at   int
		want float64
	}{{"-50 mm", 0, 0.062122}, {"+50 mm", 10, 0.049604}, {"0 mm", 5, 0}} {
		if got := solver.Angle(p.SD[tt.at]).Degrees(); !(math.Abs(got-tt.want) <= 1e-6) {
			t.Errorf("sd at %s = %.6f deg, want %.6f", tt.name, got, tt.want)
		}
	}
	if k := p.Errors[p.Ranking()[0]].Key(); k != "tieRodOuter.z@left" {
		t.Errorf("largest contributor %s, want the outer tie rod ball's height", k)
	}
	sum := 0.0
	for _, x := range p.Shares {
		sum += x
	}
	if !(math.Abs(sum-1) <= 1e-12) {
		t.Errorf("shares add up to %g", sum)
	}
}

// TestSampleAgreesWithPropagation: 0.5 mm is small for this linkage, so the
// simulated standard deviation is the linear one within sampling error.
func TestSampleAgreesWithPropagation(t *testing.T) {
	s := textbookSeries(t)
	p, err := s.Propagate()
	if err != nil {
		t.Fatal(err)
	}
	const cars = 4000
	a, err := s.Sample(context.Background(), 0, cars)
	if err != nil {
		t.Fatal(err)
	}
	band := a.Band(0.15865525393145707, 0.8413447460685429) // one standard deviation each way
	for i := range p.SD {
		got := (band[1][i] - band[0][i]) / 2
		if !(math.Abs(got-p.SD[i]) <= 0.05*p.SD[i]) {
			t.Errorf("position %d: sampled sd %.5g rad, linear %.5g", i, got, p.SD[i])
		}
	}
	if a.Failed() != 0 {
		t.Errorf("%d cars failed", a.Failed())
	}
}

// TestSampleJoins: a series is the same however it is divided.
func TestSampleJoins(t *testing.T) {
	s := textbookSeries(t)
	whole, err := s.Sample(context.Background(), 0, 200)
	if err != nil {
		t.Fatal(err)
	}
	joined, err := s.Sample(context.Background(), 0, 70)
	if err != nil {
		t.Fatal(err)
	}
	rest, err := s.Sample(context.Background(), 70, 200)
	if err != nil {
		t.Fatal(err)
	}
	joined.Join(rest)
	if !reflect.DeepEqual(whole, joined) {
		t.Error("two runs joined differ from one")
	}
}

func TestYieldAndHalving(t *testing.T) {
	s := textbookSeries(t)
	s.Measure, s.Limit = optimize.Peak, solver.Deg(0.2)
	a, err := s.Sample(context.Background(), 0, 4000)
	if err != nil {
		t.Fatal(err)
	}
	share, low, high := a.Yield(s.Measure, s.Limit)
	if !(low < share && share < high && share > 0.5 && share < 0.99) {
		t.Fatalf("yield %.3f (%.3f to %.3f)", share, low, high)
	}
	p, err := s.Propagate()
	if err != nil {
		t.Fatal(err)
	}
	gains := s.Halve(p)
	best := p.Ranking()[0]
	for _, h := range gains {
		if h.Gain > gains[best].Gain {
			t.Errorf("halving %s gains %.3f, more than the largest contributor's %.3f", p.Errors[h.Error].Key(), h.Gain, gains[best].Gain)
		}
	}
	// The estimate against a series with that tolerance halved in truth.
	s.Tolerances[indexOf(t, s, p.Errors[best].Parameter.Key)].Spread /= 2
	b, err := s.Sample(context.Background(), 0, 4000)
	if err != nil {
		t.Fatal(err)
	}
	after, _, _ := b.Yield(s.Measure, s.Limit)
	if !(math.Abs(after-share-gains[best].Gain) <= 0.02) {
		t.Errorf("yield rises by %.3f, estimated %.3f", after-share, gains[best].Gain)
	}
}

func indexOf(t *testing.T, s *optimize.Series, key string) int {
	t.Helper()
	for i := range s.Tolerances {
		if s.Tolerances[i].Parameter.Key == key {
			return i
		}
	}
	t.Fatalf("no tolerance of %s", key)
	return -1
}

func TestSampleCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	a, err := textbookSeries(t).Sample(ctx, 0, 1000)
	if err != nil {
		t.Fatal(err)
	}
	if a.Cars != 0 {
		t.Errorf("%d cars were built after the context had ended", a.Cars)
	}
}

// BenchmarkTolerance builds 100,000 cars of a series, all coordinates off, on all
// processors and moves each through 41 positions.
func BenchmarkTolerance(b *testing.B) {
	b.Run("100k-cars", func(b *testing.B) {
		s := textbookSeries(b)
		s.Travels = manyTravels(b)
		const cars = 100_000
		reportShare(b, s.Judge, cars, func() error {
			_, err := s.SampleAll(context.Background(), cars, optimize.Parallel{})
			return err
		})
	})
}
