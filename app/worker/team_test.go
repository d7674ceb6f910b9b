package worker

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"

	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/study"
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

// TestTeamAnswersAsOneWorker: a call that is divided among workers answers what one worker
// does by itself, to the byte, and its progress goes up to the end.
func TestTeamAnswersAsOneWorker(t *testing.T) {
	for method := range divided {
		t.Run(method, func(t *testing.T) {
			d := busy(t)
			var options any
			if method == calls.MapCells {
				options = engine.MapOptions{X: "tieRodOuterHeight", Y: "tieRodInnerHeight", Columns: new(9), Rows: new(11)}
			}
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
					if reports++; p.Fraction < last-0.5 || p.Fraction > 1 {
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
				if reports == 0 && method != calls.MapCells {
					t.Error("no progress was reported")
				}
			}
		})
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
	for method, whole := range map[string]string{calls.Tolerance: `"cars":10000000`, calls.Choose: `"tried":1000000`, calls.Search: `"converged":true`} {
		ctx, cancel := context.WithCancel(t.Context())
		got, err := Team{wasm.NewLocalPool(3, Handlers())}.Call(ctx, method, d, nil, func(engine.Progress) { cancel() })
		if method == calls.Search && errors.Is(err, context.Canceled) {
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
