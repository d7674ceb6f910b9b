package optimize_test

import (
	"context"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"toewright/optimize"
	"toewright/optimize/nlp"
	"toewright/solver"
)

// cars returns the span of the first n cars.
func cars(n int) optimize.Span { return optimize.Span{End: n} }

// countCars returns the propagation of a series and the census of a span of it.
func countCars(t testing.TB, s *optimize.Series, span optimize.Span) (*optimize.Spread, *optimize.Census) {
	t.Helper()
	p, err := s.Propagate()
	if err != nil {
		t.Fatal(err)
	}
	c, err := s.Count(context.Background(), p, span, optimize.Parallel{})
	if err != nil {
		t.Fatal(err)
	}
	return p, c
}

// TestCensusAgreesWithPropagation: 0.5 mm is small for this linkage, so the
// simulated standard deviation is the linear one within sampling error.
func TestCensusAgreesWithPropagation(t *testing.T) {
	p, c := countCars(t, textbookSeries(t), cars(4000))
	band := c.Band(0.15865525393145707, 0.8413447460685429) // one standard deviation each way
	for i := range p.SD {
		got := (band[1][i] - band[0][i]) / 2
		if !(math.Abs(got-p.SD[i]) <= 0.05*p.SD[i]) {
			t.Errorf("position %d: sampled sd %.5g rad, linear %.5g", i, got, p.SD[i])
		}
	}
	if c.Cars != 4000 || c.Failed != 0 {
		t.Errorf("%d cars, %d failed", c.Cars, c.Failed)
	}
}

// TestCensusJoins: a series is the same however it is divided, in whatever order
// its parts are joined.
func TestCensusJoins(t *testing.T) {
	s := textbookSeries(t)
	s.Limit = solver.Deg(0.1)
	p, whole := countCars(t, s, cars(200))
	joined := s.NewCensus(p)
	for _, i := range []int{2, 0, 1} {
		_, part := countCars(t, s, cars(200).Of(i, 3))
		joined.Join(part)
	}
	if !reflect.DeepEqual(whole, joined) {
		t.Error("three runs joined differ from one")
	}
}

// TestCensusCountsFailures: with a tie rod far off, some cars cannot be built.
func TestCensusCountsFailures(t *testing.T) {
	s := textbookSeries(t)
	for i := range s.Tolerances {
		s.Tolerances[i].Spread = 60
	}
	_, c := countCars(t, s, cars(300))
	if c.Failed == 0 || c.Failed == c.Cars {
		t.Fatalf("%d of %d cars failed, want some", c.Failed, c.Cars)
	}
	for i, curve := range c.Curve {
		if curve.Total() != c.Cars-c.Failed {
			t.Errorf("place %d: %d cars counted, %d built", i, curve.Total(), c.Cars-c.Failed)
		}
	}
	if share, _, _ := c.Yield(); share != float64(c.Passed)/300 {
		t.Errorf("yield %g with %d of 300 passed", share, c.Passed)
	}
}

// TestCensusWithoutTolerance: cars that are not off at all are the nominal one, to
// the last digit.
func TestCensusWithoutTolerance(t *testing.T) {
	s := textbookSeries(t)
	for i := range s.Tolerances {
		s.Tolerances[i].Spread = 0
	}
	p, c := countCars(t, s, cars(10))
	for i, got := range c.Band(0.5)[0] {
		if got != p.Nominal[i] {
			t.Errorf("place %d: median %g, nominal %g", i, got, p.Nominal[i])
		}
	}
}

func TestYieldAndHalving(t *testing.T) {
	s := textbookSeries(t)
	s.Measure, s.Limit = optimize.Peak, solver.Deg(0.2)
	p, a := countCars(t, s, cars(4000))
	share, low, high := a.Yield()
	if !(low < share && share < high && share > 0.5 && share < 0.99) {
		t.Fatalf("yield %.3f (%.3f to %.3f)", share, low, high)
	}
	gains := s.Halve(p)
	best := p.Ranking()[0]
	for k, gain := range gains {
		if gain > gains[best] {
			t.Errorf("halving %s gains %.3f, more than the largest contributor's %.3f", s.Tolerances[k].Key(), gain, gains[best])
		}
	}
	// The estimate against a series with that tolerance halved in truth.
	s.Tolerances[best].Spread /= 2
	_, b := countCars(t, s, cars(4000))
	after, _, _ := b.Yield()
	if !(math.Abs(after-share-gains[best]) <= 0.02) {
		t.Errorf("yield rises by %.3f, estimated %.3f", after-share, gains[best])
	}
}

func TestCensusCancelled(t *testing.T) {
	s := textbookSeries(t)
	p, err := s.Propagate()
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	c, err := s.Count(ctx, p, cars(1000), optimize.Parallel{})
	if err != nil {
		t.Fatal(err)
	}
	if c.Cars != 0 {
		t.Errorf("%d cars were built after the context had ended", c.Cars)
	}
}

// TestPercentileAmongFailures: cars that fail are worse than all others, and where a
// percentile falls among them there is none. Counted again in a sorted list in which
// each of them is infinitely bad.
func TestPercentileAmongFailures(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for range 200 {
		c := optimize.Census{Cars: 1 + rng.IntN(60), Figure: optimize.NewTally(0, 16)}
		c.Failed = rng.IntN(c.Cars + 1)
		var all []float64
		for i := range c.Cars {
			all = append(all, math.Inf(1))
			if i >= c.Failed {
				all[i] = rng.Float64()
				c.Figure.Add(all[i])
			}
		}
		share := rng.Float64()
		got, want := float64(c.Percentile(share)), nlp.Quantiles(all, share)[0]
		if failed := math.IsInf(want, 1) || math.IsNaN(want); failed != math.IsNaN(got) || !failed && !(math.Abs(got-want) <= 1e-4) {
			t.Errorf("%d of %d cars fail: the %.3f point is %g, counted again %g", c.Failed, c.Cars, share, got, want)
		}
	}
}

// TestShareByTables compares intervals of few with Newcombe's table of Wilson's score (Stat.
// Med. 17, 1998, 857-872, table I, method 3; from memory).
func TestShareByTables(t *testing.T) {
	for _, tt := range []struct {
		pass, of  int
		low, high float64
	}{{81, 263, 0.2553, 0.3662}, {15, 148, 0.0624, 0.1605}, {0, 20, 0, 0.1611}, {1, 29, 0.0061, 0.1718}} {
		_, low, high := optimize.Share(tt.pass, tt.of)
		if math.Abs(low-tt.low) > 5e-5 || math.Abs(high-tt.high) > 5e-5 {
			t.Errorf("%d of %d: %.4f to %.4f, want %.4f to %.4f", tt.pass, tt.of, low, high, tt.low, tt.high)
		}
	}
}
