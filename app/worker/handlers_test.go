package worker_test

import (
	"context"
	"encoding/json"
	"errors"
	"reflect"
	"testing"

	"toewright/app/worker"
	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/wasm"
)

// demo returns a study with a search that takes a moment.
func demo(t *testing.T) *study.Document {
	t.Helper()
	d := study.Template{Key: "double-wishbone-rack"}.Document()
	d.Search = &study.Search{Variables: []study.Variable{
		{Parameter: "tieRodOuterHeight", Min: -60, Max: 60},
		{Parameter: "steeringArmLength", Min: -40, Max: 40},
	}}
	return d
}

// TestWorkerGivesTheEnginesAnswer checks that a search through the bridge gives what
// the command gives.
func TestWorkerGivesTheEnginesAnswer(t *testing.T) {
	pool := worker.Team{Pool: wasm.NewLocalPool(1, worker.Handlers())}
	reports := 0
	raw, err := pool.Call(t.Context(), calls.Search, demo(t), nil, func(engine.Progress) { reports++ })
	if err != nil {
		t.Fatal(err)
	}
	var got engine.SearchResult
	if err := json.Unmarshal(raw, &got); err != nil {
		t.Fatal(err)
	}
	want, err := engine.Search(t.Context(), demo(t), engine.SearchOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(&got, want) {
		t.Errorf("the worker answers %+v, the engine %+v", &got, want)
	}
	if reports == 0 {
		t.Error("no progress was reported")
	}
}

func TestEveryMethodRefusesAStudyThatIsNone(t *testing.T) {
	pool := wasm.NewLocalPool(1, worker.Handlers())
	defer pool.Close()
	for method := range worker.Handlers() {
		t.Run(method, func(t *testing.T) {
			for _, params := range []string{`{"study": {"format": "else"}}`, `{}`, `{"study": null}`, `[]`} {
				if _, err := pool.Call(t.Context(), method, json.RawMessage(params), nil); err == nil {
					t.Errorf("params %s are no error", params)
				}
			}
		})
	}
}

func TestCancelledBeforeTheStart(t *testing.T) {
	pool := worker.Team{Pool: wasm.NewLocalPool(1, worker.Handlers())}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	_, err := pool.Call(ctx, calls.Search, demo(t), nil, nil)
	if !errors.Is(err, context.Canceled) {
		t.Errorf("err = %v, want %v", err, context.Canceled)
	}
}
