package engine

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"

	"toewright/internal/study"
	"toewright/optimize"
)

// demos visits each template with its own search, once as it is and once with the right
// side written out.
func demos(t *testing.T, visit func(t *testing.T, d *study.Document)) {
	t.Helper()
	for _, tpl := range study.Templates() {
		d := tpl.Document()
		t.Run(tpl.Key, func(t *testing.T) { visit(t, d) })
		if out := writtenOut(d); out != nil {
			t.Run(tpl.Key+" written out", func(t *testing.T) { visit(t, out) })
		}
	}
}

// lattice is how the cars of points all over a search's box stand to its limits.
type lattice struct {
	values []study.Changes
	limits [][]LimitResult
}

// recounted builds the cars of a lattice of the box, the window reached or not.
func recounted(t *testing.T, d *study.Document) (out lattice) {
	t.Helper()
	s, err := newSearcher(d, &SearchOptions{})
	if err != nil {
		t.Fatal(err)
	}
	const points = 80
	golden := []float64{0.7548776662, 0.5698402910, 0.4301597090} // of an even spread
	for i := range points {
		x := make([]float64, len(s.problem.Free))
		for k := range x {
			f := &s.problem.Free[k]
			_, part := math.Modf(float64(i) * golden[k%len(golden)])
			x[k] = f.Min + part*(f.Max-f.Min)
		}
		changes := s.values(x)
		if all, _, _ := s.problem.Figures(x); math.IsNaN(all.RMS.Radians()) {
			continue
		}
		out.values, out.limits = append(out.values, changes), append(out.limits, s.limitResults(s.limitsOf(x)))
	}
	return out
}

// limitsOf returns how the cars at values of the variables stand.
func (s *searcher) limitsOf(x []float64) []optimize.LimitState {
	_, _, limits := s.problem.Figures(x)
	return limits
}

// breach returns by how much the worst of limits is broken, in their own unit.
func breach(list []LimitResult) float64 {
	worst := 0.0
	for i := range list {
		worst = math.Max(worst, -list[i].Room())
	}
	return worst
}

// span returns what the largest value of a car in any set-up, or the least of it, comes to
// at least and at most among the points.
func (r lattice) span(largest bool) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, list := range r.limits {
		of := float64(list[0].Value)
		for i := range list {
			if v := float64(list[i].Value); largest == (v > of) {
				of = v
			}
		}
		low, high = math.Min(low, of), math.Max(high, of)
	}
	return low, high
}

// TestFeasibleAgainstRecount: of limits that no car can hold, one by one and in pairs, on
// every demo study, the ones in the way are named and none else, and no car all over the
// bounds comes nearer than what is called the nearest.
func TestFeasibleAgainstRecount(t *testing.T) {
	demos(t, func(t *testing.T, d *study.Document) {
		tried := 0
		for _, result := range []study.LimitKey{"tieRodLength", "outerBallAngle"} {
			for _, side := range []study.Side{"", study.Right} {
				if (d.Suspension.Right == nil) == (side == study.Right) {
					continue // one of the two on cars with both sides stated, the other elsewhere
				}
				d.Search.Limits = []study.Limit{{Result: result, Side: side, Max: ptr(1e6)}}
				points := recounted(t, d)
				low, high := points.span(true)
				leastLow, leastHigh := points.span(false)
				if !(high-low > 1e-3*high) {
					continue // the variables do not change it
				}
				tried++
				at := func(share float64) *float64 { return ptr(low + share*(high-low)) }
				own := study.Limit{Result: result, Side: side}
				below, above := own, own
				below.Max, above.Min = at(0.3), ptr(leastLow+0.7*(leastHigh-leastLow))
				far := own
				far.Max = at(-0.5)
				loose := study.Limit{Result: "steeringArmLength", Max: ptr(1e6)}
				for _, tt := range []struct {
					limits []study.Limit
					want   []int
				}{
					{[]study.Limit{loose, far}, []int{1}},
					{[]study.Limit{below, loose, above}, []int{0, 2}},
					{[]study.Limit{below, loose}, nil},
					{[]study.Limit{loose, above}, nil},
				} {
					if result == "outerBallAngle" && slices.ContainsFunc(tt.limits, func(l study.Limit) bool { return l.Min != nil }) {
						continue // the least of an angle along the travel is about 0 on any car
					}
					if solidAxle(d) {
						tt.limits = slices.DeleteFunc(tt.limits, func(l study.Limit) bool { return l.Result == loose.Result })
						for i := range tt.want {
							tt.want[i] = []int{0, 0, 1}[tt.want[i]]
						}
					}
					feasibleAs(t, d, tt.limits, tt.want)
				}
			}
		}
		if tried == 0 {
			t.Error("no limit was tried")
		}
	})
}

// feasibleAs asks about limits of which some are in each other's way.
func feasibleAs(t *testing.T, d *study.Document, limits []study.Limit, want []int) {
	t.Helper()
	d.Search.Limits = limits
	got, err := Feasible(t.Context(), d, SearchOptions{})
	if err != nil {
		t.Fatal(err)
	}
	name := fmt.Sprintf("%s of %d", limits[0].Result, len(limits))
	if want == nil {
		if !got.Feasible || len(got.Conflicts) > 0 {
			t.Fatalf("%s: %+v, want values that hold all", name, got)
		}
		return
	}
	if got.Feasible || len(got.Conflicts) != 1 || len(got.Conflicts[0].Limits) != len(want) {
		t.Fatalf("%s: %+v, want limits %v in each other's way", name, got, want)
	}
	c := got.Conflicts[0]
	for i, k := range want {
		if l := c.Limits[i]; l.Max.Valid() != (limits[k].Max != nil) || l.Name != LimitName(&limits[k]) {
			t.Errorf("%s: limit %d in the way is %+v, want number %d", name, i, l, k)
		}
	}
	taken := d.Clone()
	taken.Candidates = []study.Candidate{{Name: "nearest", Changes: c.Nearest}}
	served := compareOf(t, taken, CompareOptions{Candidate: "nearest"}).Served[0]
	if built, claimed := breach(served.Limits), breach(c.Limits); !(math.Abs(built-claimed) <= 1e-6) {
		t.Errorf("%s: the nearest, %v, breaks by %g, said %g", name, c.Nearest, built, claimed)
	}
	for i, list := range recounted(t, d).limits {
		if b := breach(list); b < breach(c.Limits)-1e-6 {
			t.Fatalf("%s: point %d breaks limits by %g, the nearest by %g", name, i, b, breach(c.Limits))
		}
	}
	if len(want) == 1 || limits[0].Side != "" {
		return
	}
	if r := searchOf(t, d, SearchOptions{}); !slices.Equal(r.Conflict, c.Names()) || r.Infeasible == nil {
		t.Errorf("%s: the search names %v, want %v", name, r.Conflict, c.Names())
	}
}

// TestFeasibleWindow: where no car reaches the window that is said, with the car that
// comes nearest, which a sweep bears out and no other car all over the bounds betters.
func TestFeasibleWindow(t *testing.T) {
	demos(t, func(t *testing.T, d *study.Document) {
		far := d.Units.FromMillimetres(900)
		d.Search.Window = &study.Travel{Bump: far, Droop: far, Step: far / 10}
		d.Search.Limits, d.Search.Scenarios = nil, nil
		got, err := Feasible(t.Context(), d, SearchOptions{})
		if err != nil {
			t.Fatal(err)
		}
		if got.Feasible || got.Reach == nil || got.Reach.Link == "" {
			t.Fatalf("%+v, want the nearest to a window of 900 mm", got)
		}
		d.Travel = d.Search.Window
		share := func(changes study.Changes) float64 {
			d.Candidates = []study.Candidate{{Name: "nearest", Changes: changes}}
			r, err := Sweep(t.Context(), d, SweepOptions{Candidate: "nearest"})
			if err != nil {
				return 0
			}
			least := 1.0
			for _, s := range r.Sweeps {
				for _, end := range []*float64{s.Reach.Bump, s.Reach.Droop} {
					if end != nil {
						least = min(least, *end/far)
					}
				}
			}
			return least
		}
		best := share(got.Reach.Values)
		if claimed := min(got.Reach.Bump, got.Reach.Droop) / far; !(math.Abs(best-claimed) <= 1e-6) {
			t.Errorf("the nearest reaches %.6f of the window, said %.6f", best, claimed)
		}
		s, _ := newSearcher(d, &SearchOptions{})
		for _, u := range []float64{0, 0.2, 0.4, 0.6, 0.8, 1} {
			for _, w := range []float64{0, 0.5, 1} {
				x := make([]float64, len(s.problem.Free))
				for k := range x {
					part := []float64{u, w, 0.5}[k%3]
					x[k] = s.problem.Free[k].Min + part*(s.problem.Free[k].Max-s.problem.Free[k].Min)
				}
				if other := share(s.values(x)); other > best+1e-4 {
					t.Errorf("%v reaches %.5f of the window, the nearest %.5f", s.values(x), other, best)
				}
			}
		}
		_, err = Search(t.Context(), d, SearchOptions{})
		wantError(t, err, Unsolvable, "search", "The nearest, ")
	})
}

// TestFeasibleStops: cancelled, the call says so and nothing else.
func TestFeasibleStops(t *testing.T) {
	gone, cancel := context.WithCancel(t.Context())
	cancel()
	if r, err := Feasible(gone, limitedStudy(t, `{"result": "steeringArmLength", "min": 300}`), SearchOptions{}); r != nil || !errors.Is(err, context.Canceled) {
		t.Errorf("%+v, %v; want that it was cancelled", r, err)
	}
}
