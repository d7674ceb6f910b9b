package optimize_test

import (
	"context"
	"math"
	"testing"

	"toewright/optimize"
	"toewright/optimize/nlp"
	"toewright/solver"
)

// tieRodLength measures the static length of the left tie rod, mm.
func tieRodLength(car *solver.Axle, _ *solver.Workspace) float64 {
	k := car.Design().Kind
	var outer, inner solver.Vec
	for i, h := range k.SidePoints {
		switch h.Role {
		case solver.TieRodOuterRole:
			outer = car.StaticPoint(solver.Left, i)
		case solver.TieRodInnerRole:
			inner = car.StaticPoint(solver.Left, i)
		}
	}
	return math.Sqrt((outer.X-inner.X)*(outer.X-inner.X) + (outer.Y-inner.Y)*(outer.Y-inner.Y) + (outer.Z-inner.Z)*(outer.Z-inner.Z))
}

func limitedSearch(t testing.TB, limits ...optimize.Limit) *optimize.ToeSearch {
	t.Helper()
	j := textbookJudge(t)
	return &optimize.ToeSearch{
		Base: j.Base, Travels: j.Travels, Judge: solver.LeftOnly, Limits: limits,
		Free: []optimize.Free{
			freeOf(t, j.Base, "tieRodInnerHeight", -20, 20),
			freeOf(t, j.Base, "tieRodInnerLateral", -20, 20),
		},
	}
}

// TestSearchTextbook: with inner height and lateral place free the textbook's
// linkage comes to 0.000497 deg rms at (-1.7479, -2.0167) mm (recomputed with
// scipy). The lateral optimum is flat: the objective is what must be met.
func TestSearchTextbook(t *testing.T) {
	a, err := optimize.SearchToe(context.Background(), limitedSearch(t), nil)
	if err != nil {
		t.Fatal(err)
	}
	if got := a.Best.RMS.Degrees(); !(got <= 0.000497*1.001) {
		t.Errorf("rms %.7f deg, want 0.000497", got)
	}
	for i, want := range []float64{-1.7479, -2.0167} {
		if !(math.Abs(a.Values[i]-want) <= 0.05) {
			t.Errorf("variable %d = %.4f mm, want %.4f", i, a.Values[i], want)
		}
	}
}

func TestSearchHoldsLimits(t *testing.T) {
	free, err := optimize.SearchToe(context.Background(), limitedSearch(t), nil)
	if err != nil {
		t.Fatal(err)
	}
	limit := optimize.Limit{Name: "tie rod length", Min: math.Inf(-1), Max: 315, Scale: 1, Of: tieRodLength}
	held, err := optimize.SearchToe(context.Background(), limitedSearch(t, limit), nil)
	if err != nil {
		t.Fatal(err)
	}
	if held.Result.Status != nlp.Converged || len(held.Limits) != 1 || !held.Limits[0].Held {
		t.Fatalf("status %v, limits %v", held.Result.Status, held.Limits)
	}
	if got := held.Limits[0].Value; !(math.Abs(got-315) <= 1e-3) {
		t.Errorf("the tie rod ends at %.5f mm, want the limit of 315", got)
	}
	if !(held.Best.RMS > free.Best.RMS) {
		t.Error("a limit that binds cost nothing")
	}
}

func TestSearchNamesConflict(t *testing.T) {
	short := optimize.Limit{Name: "short rod", Min: math.Inf(-1), Max: 300, Scale: 1, Of: tieRodLength}
	long := optimize.Limit{Name: "long rod", Min: 320, Max: math.Inf(1), Scale: 1, Of: tieRodLength}
	a, err := optimize.SearchToe(context.Background(), limitedSearch(t, short, long), nil)
	if err != nil {
		t.Fatal(err)
	}
	if a.Result.Status != nlp.Infeasible {
		t.Fatalf("status %v, want infeasible", a.Result.Status)
	}
	broken := 0
	for _, l := range a.Limits {
		if !l.Held {
			broken++
		}
	}
	if broken == 0 {
		t.Errorf("no limit is named as broken: %v", a.Limits)
	}
}

func TestLimitRefused(t *testing.T) {
	inf := math.Inf(1)
	for _, l := range []optimize.Limit{
		{Name: "no scale", Min: 0, Max: 1, Of: tieRodLength},
		{Name: "turned round", Min: 2, Max: 1, Scale: 1, Of: tieRodLength},
		{Name: "boundless", Min: -inf, Max: inf, Scale: 1, Of: tieRodLength},
		{Name: "measures nothing", Min: 0, Max: 1, Scale: 1},
		{Name: "no number", Min: math.NaN(), Max: 1, Scale: 1, Of: tieRodLength},
	} {
		if _, err := optimize.SearchToe(context.Background(), limitedSearch(t, l), nil); err == nil {
			t.Errorf("%s: accepted", l.Name)
		}
	}
}
