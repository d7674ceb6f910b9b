package api

import (
	"bytes"
	"encoding/json"
	"log/slog"
	"net/http"
	"strings"
	"testing"
)

func TestLogHoldsNothingOfTheStudy(t *testing.T) {
	var log bytes.Buffer
	h := New(Config{Logger: slog.New(slog.NewJSONHandler(&log, nil))})
	post(t, h, "sweep?candidate=low+ball", saloon)
	post(t, h, "sweep?candidate=secret", saloon)
	post(t, h, "secret", saloon)
	lines := strings.Split(strings.TrimSpace(log.String()), "\n")
	want := []struct {
		call   string
		status float64
	}{{"sweep", 200}, {"sweep", 400}, {"none", 404}}
	if len(lines) != len(want) {
		t.Fatalf("log:\n%s\nwant %d lines", log.String(), len(want))
	}
	for i, line := range lines {
		var got map[string]any
		if err := json.Unmarshal([]byte(line), &got); err != nil {
			t.Fatalf("line %q: %v", line, err)
		}
		if got["call"] != want[i].call || got["status"] != want[i].status || !(got["bytes"].(float64) > 0) {
			t.Errorf("line %d = %v, want %v", i, got, want[i])
		}
	}
	for _, word := range []string{"low ball", "secret", "wishbone"} {
		if strings.Contains(log.String(), word) {
			t.Errorf("the log holds %q:\n%s", word, log.String())
		}
	}
}

func TestMetricsCountCalls(t *testing.T) {
	h := New(Config{Version: "v1.2"})
	for range 3 {
		post(t, h, "sweep", saloon)
	}
	post(t, h, "sweep", "{}")
	status, body := get(t, h.Metrics, "/metrics")
	if status != http.StatusOK {
		t.Fatalf("metrics = %d", status)
	}
	for _, want := range []string{
		`toewright_calls_total{call="sweep",status="200"} 3`,
		`toewright_calls_total{call="sweep",status="400"} 1`,
		"toewright_calls_running 0",
		`toewright_build_info{version="v1.2"} 1`,
		"# TYPE toewright_goroutines gauge",
	} {
		if !strings.Contains(body, want+"\n") {
			t.Errorf("metrics do not hold the line %q:\n%s", want, body)
		}
	}
}
