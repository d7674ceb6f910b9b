package worker

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"
	"testing"

	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/optimize"
	"toewright/wasm"
)

// busy returns a study on which each divided call has something to do.
func busy(t *testing.T) *study.Document {
	t.Helper()
	d := study.Template{Key: "double-wishbone-rack"}.Document()
	d.Search = &study.Search{
		Variables: []study.Variable{{Parameter: "tieRodOuterHeight", Min: -60, Max: 60}, {Parameter: "tieRodInnerHeight", Min: -9, Max: 9}},
		Scenarios: []study.Scenario{{Name: "as it stands"}, {Name: "lowered", Changes: study.Changes{"rideHeight": -12}}},
	}
	d.Tolerances = []study.Tolerance{{Parameter: "tieRodOuter.z", PlusMinus: 1}, {Parameter: "caster", PlusMinus: 0.5}}
	d.Yield = &study.Yield{Limit: 0.3, Cars: 1500, Seed: 3}
	d.Catalogue = nil
	for i := range 9 {
		for _, key := range []string{"tieRodOuterHeight", "tieRodInnerHeight", "steeringArmLength"} {
			d.Catalogue = append(d.Catalogue, partOf(key, i))
		}
	}
	return d
}

func partOf(key string, i int) study.Part {
	return study.Part{Slot: key, Name: fmt.Sprintf("%s %d", key, i), Price: float64(i), Changes: study.Changes{key: float64(i) / 2}}
}

// askings are what each divided call is asked with, beside its defaults.
func askings(method string) []any {
	over := engine.MapOptions{X: "tieRodOuterHeight", Y: "tieRodInnerHeight", Columns: new(9), Rows: new(11)}
	switch method {
	case calls.MapCells, calls.MapRoom:
		few := over
		few.Rows = new(3) // fewer than workers
		return []any{over, few}
	case calls.TradeOff:
		return []any{nil, engine.TradeOffOptions{Aim: "ackermann", Designs: new(6)}, engine.TradeOffOptions{Aim: "ratio", Designs: new(2)}}
	}
	return []any{nil}
}

// TestTeamAnswersAsOneWorker: a call that is divided among workers answers what one worker
// does by itself, to the byte, and its progress goes up to the end; with limits and without.
func TestTeamAnswersAsOneWorker(t *testing.T) {
	limited := busy(t)
	limited.Search.Limits = []study.Limit{{Result: "tieRodLength", Max: new(352.0)}, {Result: "outerBallAngle", Max: new(20.0)}}
	for method := range divided {
		studies := map[string]*study.Document{"no limits": busy(t), "limits": limited}
		if method == calls.Search {
			maps.Copy(studies, onGrids(busy(t), limited))
		}
		for i, options := range askings(method) {
			for name, d := range studies {
				t.Run(fmt.Sprint(method, i, name), func(t *testing.T) { asOneWorker(t, method, d, options) })
			}
		}
	}
}

// onGrids returns studies whose answers are rounded to what the shop can make: to grids of which
// all points are tried, and to finer ones.
func onGrids(of ...*study.Document) map[string]*study.Document {
	out := map[string]*study.Document{}
	for i, d := range of {
		for _, grid := range []float64{1, 0.25} {
			e := d.Clone()
			for k := range e.Search.Variables {
				e.Search.Variables[k].Grid = grid
			}
			out[fmt.Sprintf("grid %g, study %d", grid, i)] = e
		}
	}
	return out
}

func asOneWorker(t *testing.T, method string, d *study.Document, options any) {
	want, err := Team{wasm.NewLocalPool(1, Handlers())}.Call(t.Context(), method, d, options, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range []int{2, 5} {
		last, reports := 0.0, 0
		var mu sync.Mutex
		got, err := Team{wasm.NewLocalPool(n, Handlers())}.Call(t.Context(), method, d, options, func(p engine.Progress) {
			mu.Lock()
			defer mu.Unlock()
			if method == calls.Search && p.Evaluations > 0 && p.Best.Valid() != (p.Values != nil) {
				t.Errorf("a best of %g of the values %v", p.Best, p.Values)
			}
			if reports++; p.Fraction < last-0.1 || p.Fraction > 1 {
				t.Errorf("progress %g after %g", p.Fraction, last)
			}
			last = p.Fraction
		})
		if err != nil {
			t.Fatal(err)
		}
		if string(got) != string(want) {
			t.Errorf("%d workers: %.300s\nwant %.300s", n, got, want)
		}
		if reports == 0 && method != calls.MapCells && method != calls.MapRoom {
			t.Error("no progress was reported")
		}
	}
}

// TestTeamStopped cancels a divided call at its first report: the answer is the best of what
// the workers had by then, and says that it is no more.
func TestTeamStopped(t *testing.T) {
	d := busy(t)
	d.Yield.Cars = 10_000_000
	for i := range 9 {
		for _, key := range []string{"tieRodInnerLateral", "steeringArmOffset", "upperBallJointHeight"} {
			d.Catalogue = append(d.Catalogue, partOf(key, i))
		}
	}
	for method, whole := range map[string]string{calls.Tolerance: `"cars":10000000`, calls.Choose: `"tried":1000000`, calls.Search: `"converged":true`, calls.TradeOff: ""} {
		ctx, cancel := context.WithCancel(t.Context())
		got, err := Team{wasm.NewLocalPool(3, Handlers())}.Call(ctx, method, d, nil, func(engine.Progress) { cancel() })
		if method == calls.TradeOff && err == nil && strings.Contains(string(got), `"stopped":true`) {
			continue
		}
		if (method == calls.Search || method == calls.TradeOff) && errors.Is(err, context.Canceled) {
			continue // No shard had found something yet.
		}
		if err != nil || !json.Valid(got) || strings.Contains(string(got), whole) {
			t.Errorf("%s: %.200s, %v", method, got, err)
		}
	}
}

// TestTeamFails: a fault of the study is told once, as one worker tells it, and a worker that
// ends ends the call.
func TestTeamFails(t *testing.T) {
	d := busy(t)
	d.Tolerances = nil
	_, want := engine.Tolerance(t.Context(), d, engine.ToleranceOptions{})
	_, err := Team{wasm.NewLocalPool(4, Handlers())}.Call(t.Context(), calls.Tolerance, d, nil, nil)
	if err == nil || err.Error() != want.Error() {
		t.Errorf("error %v, want %v", err, want)
	}
	broken := errors.New("the worker ended")
	of := []error{context.Canceled, broken, nil}
	if got := fault(slices.Clone(of), make([]json.RawMessage, 3)); got != broken {
		t.Errorf("error %v, want %v", got, broken)
	}
	if got := fault([]error{context.Canceled, nil}, make([]json.RawMessage, 2)); got != nil {
		t.Errorf("error %v of a call with something found", got)
	}
}

// TestTogetherJoinsDesigns: what is told of a trade-off are the designs of all workers of which
// none is better, and none is lost while the answer is put together.
func TestTogetherJoinsDesigns(t *testing.T) {
	d := busy(t)
	told := func(s engine.Shard, known *optimize.FrontSearches) (last *engine.TradeOffResult, found *optimize.FrontSearches) {
		run, err := engine.NewTradeOffRun(d, engine.TradeOffOptions{Designs: new(6), Progress: func(p engine.Progress) {
			if p.Designs != nil {
				last = p.Designs
			}
		}})
		if err != nil {
			t.Fatal(err)
		}
		if known == nil {
			ends, err := run.Ends(t.Context(), s)
			if err != nil {
				t.Fatal(err)
			}
			return last, &ends
		}
		if _, err := run.Levels(t.Context(), s, known); err != nil {
			t.Fatal(err)
		}
		return last, known
	}
	_, known := told(engine.Whole, nil)
	var heard engine.Progress
	all := &together{tell: func(p engine.Progress) { heard = p }, each: make([]engine.Progress, 2)}
	for i := range all.each {
		all.each[i].Designs, _ = told(engine.Shard{Index: i, Of: 2}, known)
		if n := len(all.each[i].Designs.Designs); n < 3 {
			t.Fatalf("worker %d tells of %d designs, want more than the ends", i, n)
		}
	}
	joined := all.sum().Designs
	if len(joined.Designs) <= max(len(all.each[0].Designs.Designs), len(all.each[1].Designs.Designs)) {
		t.Errorf("%d designs of both, want more than of either", len(joined.Designs))
	}
	for i, p := range joined.Designs {
		if i > 0 && !(p.Score >= joined.Designs[i-1].Score && p.Aim < joined.Designs[i-1].Aim) {
			t.Errorf("design %d gives %g at %g after %g at %g", i, p.Score, p.Aim, joined.Designs[i-1].Score, joined.Designs[i-1].Aim)
		}
	}
	if !joined.Stopped {
		t.Error("what is told on the way is said to be all there is")
	}
	all.last()(engine.Progress{Designs: &engine.TradeOffResult{Designs: joined.Designs[:1]}})
	if len(heard.Designs.Designs) != len(joined.Designs) {
		t.Errorf("%d designs as the answer begins, want the %d told of", len(heard.Designs.Designs), len(joined.Designs))
	}
}
