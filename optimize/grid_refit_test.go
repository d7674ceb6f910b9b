package optimize_test

import (
	"context"
	"math"
	"testing"

	"toewright/optimize"
)

// TestRoundFitsTheRestAnew rounds one of two parameters to sizes of which none is near the
// answer. The other one makes up for it: as far as a search does in which the first may
// not move at all.
func TestRoundFitsTheRestAnew(t *testing.T) {
	p := limitedSearch(t)
	p.Limits = nil
	a, err := optimize.SearchToe(context.Background(), p, nil)
	if err != nil {
		t.Fatal(err)
	}
	sizes := []float64{a.Values[0] - 4, a.Values[0] + 3}
	best := math.Inf(1)
	for _, size := range sizes {
		held := *p
		held.Free = append([]optimize.Free(nil), p.Free...)
		held.Free[0].Min, held.Free[0].Max = size-1e-9, size+1e-9
		b, err := optimize.SearchToe(context.Background(), &held, nil)
		if err != nil {
			t.Fatal(err)
		}
		best = math.Min(best, float64(b.Best.RMS))
	}
	r, err := p.Round(context.Background(), a.Values, []optimize.Grid{{Sizes: sizes}, {}}, nil)
	if err != nil {
		t.Fatal(err)
	}
	if got := float64(r.Best.RMS); !(math.Abs(got-best) <= 1e-6*best) {
		t.Errorf("rounded to %v with %.6g rad, want %.6g", r.Values, got, best)
	}
	stays := []float64{r.Values[0], a.Values[1]}
	if figures, _, _ := p.Figures(stays); !(float64(r.Best.RMS) < 0.9*float64(figures.RMS)) {
		t.Errorf("%.6g rad is no gain on %.6g, which needs no fit", float64(r.Best.RMS), float64(figures.RMS))
	}
}

// TestRobustRoundFitsTheRestAnew likewise by the percentile: never worse than with the
// rest as it was.
func TestRobustRoundFitsTheRestAnew(t *testing.T) {
	p := optimize.RobustSearch{ToeSearch: *limitedSearch(t), Tolerances: textbookSeries(t).Tolerances}
	a, err := optimize.SearchRobust(context.Background(), &p, &optimize.Settings{Restarts: 4})
	if err != nil {
		t.Fatal(err)
	}
	s := &optimize.Settings{Restarts: 4}
	size := a.Values[0] + 3
	r, err := p.Round(context.Background(), a.Values, []optimize.Grid{{Sizes: []float64{size}}, {}}, s)
	if err != nil {
		t.Fatal(err)
	}
	stays, err := p.Round(context.Background(), []float64{size, a.Values[1]}, []optimize.Grid{{Sizes: []float64{size}}, {Sizes: []float64{a.Values[1]}}}, s)
	if err != nil {
		t.Fatal(err)
	}
	if r.Values[0] != size || !(r.Percentile < stays.Percentile) {
		t.Errorf("%v has the percentile %.6g rad, want less than %.6g with the rest as it was", r.Values, float64(r.Percentile), float64(stays.Percentile))
	}
}
