package api

import (
	"cmp"
	"fmt"
	"io"
	"maps"
	"net/http"
	"runtime"
	"slices"
	"sync"
	"time"
)

// metrics counts requests.
type metrics struct {
	mu    sync.Mutex
	calls map[outcome]tally
}

// outcome is a call and how it ended.
type outcome struct {
	call   string
	status int
}

// tally is how often that was, and how long it took in all.
type tally struct {
	count int64
	took  time.Duration
}

func newMetrics() *metrics { return &metrics{calls: map[outcome]tally{}} }

func (m *metrics) count(call string, status int, took time.Duration) {
	m.mu.Lock()
	defer m.mu.Unlock()
	t := m.calls[outcome{call, status}]
	m.calls[outcome{call, status}] = tally{t.count + 1, t.took + took}
}

// snapshot returns a copy of the counts.
func (m *metrics) snapshot() map[outcome]tally {
	m.mu.Lock()
	defer m.mu.Unlock()
	return maps.Clone(m.calls)
}

// serveMetrics writes the counts in the text format that monitoring systems read:
// a name, labels and a value on each line.
func (h *handler) serveMetrics(w http.ResponseWriter, _ *http.Request) {
	w.Header().Set("Content-Type", "text/plain; version=0.0.4; charset=utf-8")
	w.Header().Set("Cache-Control", "no-store")
	header(w, "toewright_build_info", "The version of the program.", "gauge")
	fmt.Fprintf(w, "toewright_build_info{version=%q} 1\n", h.cfg.Version)
	h.metrics.write(w)
	var mem runtime.MemStats
	runtime.ReadMemStats(&mem)
	gauge(w, "toewright_calls_running", "Calls that are worked on.", int64(h.work.running()))
	gauge(w, "toewright_calls_waiting", "Calls that wait for their turn.", h.work.waiting.Load())
	gauge(w, "toewright_calls_reading", "Calls whose study is arriving.", int64(h.reading.running()))
	gauge(w, "toewright_streams_running", "Calls for many change sets.", int64(h.streams.running()))
	gauge(w, "toewright_goroutines", "Goroutines of the program.", int64(runtime.NumGoroutine()))
	gauge(w, "toewright_heap_bytes", "Memory in use.", int64(mem.HeapAlloc))
}

func (m *metrics) write(w io.Writer) {
	all := m.snapshot()
	keys := slices.SortedFunc(maps.Keys(all), func(a, b outcome) int {
		return cmp.Or(cmp.Compare(a.call, b.call), cmp.Compare(a.status, b.status))
	})
	header(w, "toewright_calls_total", "Calls answered.", "counter")
	for _, k := range keys {
		fmt.Fprintf(w, "toewright_calls_total{call=%q,status=\"%d\"} %d\n", k.call, k.status, all[k].count)
	}
	header(w, "toewright_calls_seconds_total", "Time spent on them.", "counter")
	for _, k := range keys {
		fmt.Fprintf(w, "toewright_calls_seconds_total{call=%q,status=\"%d\"} %g\n", k.call, k.status, all[k].took.Seconds())
	}
}

func gauge(w io.Writer, name, help string, value int64) {
	header(w, name, help, "gauge")
	fmt.Fprintf(w, "%s %d\n", name, value)
}

func header(w io.Writer, name, help, kind string) {
	fmt.Fprintf(w, "# HELP %s %s\n# TYPE %s %s\n", name, help, name, kind)
}
