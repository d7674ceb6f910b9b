package main

import (
	"maps"
	"strings"
	"testing"
)

func TestParseMetrics(t *testing.T) {
	const text = `# HELP toewright_calls_total Calls answered.
# TYPE toewright_calls_total counter
toewright_calls_total{call="sweep",status="200"} 3
toewright_calls_total{call="compare",status="200"} 2
toewright_calls_total{call="sweep",status="429"} 7
toewright_goroutines 12
`
	m, err := parseMetrics(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	if got := m[goroutines]; got != 12 {
		t.Errorf("goroutines = %g, want 12", got)
	}
	if got, want := m.statuses(), map[string]int{"200": 5, "429": 7}; !maps.Equal(got, want) {
		t.Errorf("statuses = %v, want %v", got, want)
	}
}

func TestParseMetricsRefuses(t *testing.T) {
	for _, text := range []string{"name", "name many"} {
		if _, err := parseMetrics(strings.NewReader(text)); err == nil || !strings.Contains(err.Error(), text) {
			t.Errorf("parseMetrics(%q) error = %v, want one that holds the line", text, err)
		}
	}
}
