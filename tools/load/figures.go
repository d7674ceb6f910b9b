package main

import (
	"errors"
	"fmt"
	"maps"
	"runtime"
	"slices"
	"strings"
	"time"
)

// heapLimit is the most that the server may hold in memory, in bytes: all the studies
// that may arrive at once at their largest, and as much again for what the collector
// has not yet taken back.
const heapLimit = 2 * 256 << 20

// verdict returns an error for each thing that is not as it must be.
func (f *figures) verdict() error {
	var wrong []error
	for status, n := range f.server {
		if status >= "500" {
			wrong = append(wrong, fmt.Errorf("the server answered %d calls with %s", n, status))
		}
	}
	for i, all := range f.ends {
		for end, n := range all {
			if end >= "5" && end != closed && end != "left" {
				wrong = append(wrong, fmt.Errorf("%s: %d ended by %s", f.storms[i].name, n, end))
			}
		}
	}
	for _, a := range []*attack{f.calm, f.sweeps} {
		for status, n := range a.StatusCodes {
			if status == "0" || status >= "5" {
				wrong = append(wrong, fmt.Errorf("%d sweeps ended by status %s: %q", n, status, a.Errors))
			}
		}
	}
	if !(f.peakHeap <= heapLimit) {
		wrong = append(wrong, fmt.Errorf("the heap grew to %.0f MB, want at most %.0f", f.peakHeap/1e6, heapLimit/1e6))
	}
	if !f.idle() {
		wrong = append(wrong, fmt.Errorf("left over after %s: %v, want as before: %v", f.settled, f.after, f.before))
	}
	if f.stopErr == nil && f.lastEnd != "200" && f.lastEnd != "503" {
		wrong = append(wrong, fmt.Errorf("asked to stop, the server ended the call that ran with %s, want 200 or 503", f.lastEnd))
	}
	return errors.Join(append(wrong, f.stopErr)...)
}

// String returns the figures as tables in Markdown.
func (f *figures) String() string {
	var b strings.Builder
	line := func(name, format string, args ...any) {
		fmt.Fprintf(&b, "| %s | "+format+" |\n", append([]any{name}, args...)...)
	}
	both := func(name string, of func(*attack) string) { line(name, "%s | %s", of(f.calm), of(f.sweeps)) }
	fmt.Fprintf(&b, "| %d sweeps/s for %s, %d cores | alone | beside the storms |\n| --- | --- | --- |\n", f.options.rate, f.options.lasting, runtime.NumCPU())
	both("sent", func(a *attack) string { return fmt.Sprintf("%d, %.0f a second", a.Requests, a.Rate) })
	both("answered", func(a *attack) string { return ends(a.StatusCodes).String() })
	both("with success", func(a *attack) string { return fmt.Sprintf("%.1f %%, %.0f a second", 100*a.answered(), a.Throughput) })
	both("time to answer, p50 / p95 / p99 / max", func(a *attack) string {
		l := &a.Latencies
		return fmt.Sprintf("%s / %s / %s / %s", rounded(l.P50), rounded(l.P95), rounded(l.P99), rounded(l.Max))
	})
	line("cores, server / load tool / storms", "%.2f / %.2f | %.2f / %.2f / %.2f", f.calm.server, f.calm.tool, f.sweeps.server, f.sweeps.tool, f.storming)
	b.WriteString("\n| server | |\n| --- | --- |\n")
	line("goroutines before / most / after", "%.0f / %.0f / %.0f", f.before[goroutines], f.peakGoroutines, f.after[goroutines])
	line("heap before / most / after, MB", "%.1f / %.1f / %.1f", f.before[heap]/1e6, f.peakHeap/1e6, f.after[heap]/1e6)
	line("calls left, running / waiting / reading", "%.0f / %.0f / %.0f", f.after[running], f.after[waiting], f.after[reading])
	line("as before after", "%s", rounded(f.settled))
	line("asked to stop while a call ran: the call", "%s", f.lastEnd)
	line("stopped within", "%s", rounded(f.stopped))
	b.WriteString("\n| storm beside it | senders | how the requests ended |\n| --- | --- | --- |\n")
	for i, s := range f.storms {
		fmt.Fprintf(&b, "| %s | %d | %s |\n", s.name, s.senders, f.ends[i])
	}
	return b.String()
}

// String lists the ends with their counts.
func (e ends) String() string {
	var parts []string
	for _, end := range slices.Sorted(maps.Keys(e)) {
		parts = append(parts, fmt.Sprintf("%s: %d", end, e[end]))
	}
	return strings.Join(parts, ", ")
}

// rounded returns a time to a tenth of a millisecond.
func rounded(d time.Duration) time.Duration { return d.Round(100 * time.Microsecond) }
