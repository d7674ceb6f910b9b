package api

import (
	"context"
	"io"
	"math"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/solver"
)

// BenchmarkCall is what a call costs the server, without the network. "x-solver" is the
// ratio of its time to that of the bare sweeps of the same cars, least of many by turns,
// "x-engine" to that of the engine's call. A study is "again" one that was sent before, and
// "new" where it has to be read.
func BenchmarkCall(b *testing.B) {
	for _, call := range []string{"sweep", "compare"} {
		b.Run(call+"/again", func(b *testing.B) { benchmarkCall(b, call, Config{}) })
		b.Run(call+"/new", func(b *testing.B) { benchmarkCall(b, call, Config{Kept: 1}) }) // which keeps none
	}
}

func benchmarkCall(b *testing.B, call string, cfg Config) {
	h := New(cfg)
	bare, engines := ofSolver(b), ofEngine(b)
	least := [3]time.Duration{math.MaxInt64, math.MaxInt64, math.MaxInt64}
	b.ReportAllocs()
	for b.Loop() {
		for i, do := range []func(){func() { callOnce(b, h, call) }, engines, bare} {
			began := time.Now()
			do()
			least[i] = min(least[i], time.Since(began))
		}
	}
	b.ReportMetric(float64(least[0])/1e3, "µs/least")
	b.ReportMetric(float64(least[0])/float64(least[1]), "x-engine")
	b.ReportMetric(float64(least[0])/float64(least[2]), "x-solver")
}

// BenchmarkLoopback is what a call costs by HTTP on the loopback, its caller included, packed by gzip
// and plain, by turns with a handler that reads the study and answers nothing: "µs/empty" is that of
// net/http and the system.
func BenchmarkLoopback(b *testing.B) {
	server := httptest.NewServer(New(Config{}))
	defer server.Close()
	empty := httptest.NewServer(http.HandlerFunc(func(_ http.ResponseWriter, r *http.Request) { io.Copy(io.Discard, r.Body) }))
	defer empty.Close()
	sweep := server.URL + base + "sweep"
	ways := []struct {
		unit, url, accepted string
		least               time.Duration
	}{{"µs/packed", sweep, "gzip", math.MaxInt64}, {"µs/plain", sweep, "identity", math.MaxInt64}, {"µs/empty", empty.URL, "identity", math.MaxInt64}}
	for b.Loop() {
		for i := range ways {
			w := &ways[i]
			began := time.Now()
			if status, err := sendFor(b.Context(), w.url, w.accepted); err != nil || status != http.StatusOK {
				b.Fatal(status, err)
			}
			w.least = min(w.least, time.Since(began))
		}
	}
	for _, w := range ways {
		b.ReportMetric(float64(w.least)/1e3, w.unit)
	}
}

// BenchmarkLines is what one of many change sets on lines costs the server, beside what it
// costs by a call of its own.
func BenchmarkLines(b *testing.B) {
	const sets = 8
	h := New(Config{})
	body := oneLine(b) + "\n" + strings.Repeat(`{"changes": {"tieRodOuterHeight": -8}}`+"\n", sets)
	least, alone := time.Duration(math.MaxInt64), time.Duration(math.MaxInt64)
	for b.Loop() {
		began := time.Now()
		w := &discard{header: http.Header{}}
		r := httptest.NewRequest(http.MethodPost, base+"sweep", strings.NewReader(body))
		r.Header.Set("Content-Type", linesType)
		h.ServeHTTP(w, r)
		least = min(least, time.Since(began)/sets)
		if w.writes != sets {
			b.Fatalf("%d lines, want %d", w.writes, sets)
		}
		began = time.Now()
		callOnce(b, h, "sweep?candidate=low+ball")
		alone = min(alone, time.Since(began))
	}
	b.ReportMetric(float64(least)/1e3, "µs/set")
	b.ReportMetric(float64(least)/float64(alone), "x-alone")
}

func callOnce(b *testing.B, h http.Handler, call string) {
	w := &discard{header: http.Header{}}
	r := httptest.NewRequest(http.MethodPost, base+call, strings.NewReader(saloon))
	r.Header.Set("Content-Type", "application/json")
	h.ServeHTTP(w, r)
	if w.status != http.StatusOK {
		b.Fatalf("%s: %d", call, w.status)
	}
}

// discard takes an answer and keeps nothing of it.
type discard struct {
	header         http.Header
	status, writes int
}

func (d *discard) Header() http.Header         { return d.header }
func (d *discard) WriteHeader(status int)      { d.status = status }
func (d *discard) Write(p []byte) (int, error) { d.writes++; return len(p), nil }

// ofEngine returns the engine's sweep of the study.
func ofEngine(b *testing.B) func() {
	d, err := study.Decode([]byte(saloon))
	if err != nil {
		b.Fatal(err)
	}
	return func() {
		if _, err := engine.Sweep(context.Background(), d, engine.SweepOptions{}); err != nil {
			b.Fatal(err)
		}
	}
}

// ofSolver returns what the solver alone does for it: to assemble its cars and move them.
func ofSolver(b *testing.B) func() {
	d, err := study.Decode([]byte(saloon))
	if err != nil {
		b.Fatal(err)
	}
	design, err := d.Design()
	if err != nil {
		b.Fatal(err)
	}
	var in solver.SweepInput
	if in.Travels, err = solver.Grid(d.Travel.Bump, d.Travel.Droop, d.Travel.Step); err != nil {
		b.Fatal(err)
	}
	in.Ground, in.Instant = true, true
	ws := solver.NewWorkspace()
	var out [2]solver.Curve
	a, err := solver.NewAssembler(design)
	if err != nil {
		b.Fatal(err)
	}
	list, err := d.SolverChanges(design, d.Candidates[0].Changes)
	if err != nil {
		b.Fatal(err)
	}
	return func() {
		for _, changes := range [][]solver.Change{nil, list} {
			x, err := a.Assemble(changes, solver.HoldAll)
			if err != nil {
				b.Fatal(err)
			}
			in.Joints = x.Joints()
			if err := x.Sweep(ws, &in, &out); err != nil {
				b.Fatal(err)
			}
		}
	}
}
