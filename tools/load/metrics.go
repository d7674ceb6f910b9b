package main

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"net/http"
	"strconv"
	"strings"
)

// metrics are the server's counts and gauges by name, labels included.
type metrics map[string]float64

// parseMetrics reads the text that /metrics answers with.
func parseMetrics(text io.Reader) (metrics, error) {
	m := metrics{}
	lines := bufio.NewScanner(text)
	for lines.Scan() {
		line := lines.Text()
		if line == "" || line[0] == '#' {
			continue
		}
		at := strings.LastIndexByte(line, ' ')
		v, err := strconv.ParseFloat(line[at+1:], 64)
		if at < 0 || err != nil {
			return nil, fmt.Errorf("metrics hold the line %q", line)
		}
		m[line[:at]] = v
	}
	return m, lines.Err()
}

// metrics asks the server for them, over a connection of its own.
func (s *server) metrics(ctx context.Context) (metrics, error) {
	r, err := http.NewRequestWithContext(ctx, http.MethodGet, s.url+"/metrics", nil)
	if err != nil {
		return nil, err
	}
	r.Close = true
	answer, err := http.DefaultClient.Do(r)
	if err != nil {
		return nil, err
	}
	defer answer.Body.Close()
	return parseMetrics(answer.Body)
}

// Names of gauges.
const (
	goroutines = "toewright_goroutines"
	heap       = "toewright_heap_bytes"
	running    = "toewright_calls_running"
	waiting    = "toewright_calls_waiting"
	reading    = "toewright_calls_reading"
)

// statuses returns how many calls ended in each status.
func (m metrics) statuses() map[string]int {
	counts := map[string]int{}
	for name, v := range m {
		if rest, ok := strings.CutPrefix(name, "toewright_calls_total{"); ok {
			_, status, _ := strings.Cut(rest, `status="`)
			counts[strings.TrimRight(status, `"}`)] += int(v)
		}
	}
	return counts
}
