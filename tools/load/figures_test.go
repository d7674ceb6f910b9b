package main

import (
	"errors"
	"strings"
	"testing"
	"time"
)

// sound returns the figures of a run with nothing wrong in it.
func sound() *figures {
	return &figures{
		options: options{rate: 1000, lasting: time.Minute},
		calm:    &attack{Requests: 4, StatusCodes: map[string]int{"200": 4}, server: 0.5, tool: 0.25},
		sweeps:  &attack{Requests: 5, StatusCodes: map[string]int{"200": 4, "429": 1}},
		storms:  []*storm{{name: "bad", senders: 2}},
		ends:    []ends{{"400": 3, closed: 2, "left": 1}},
		server:  ends{"200": 4, "400": 3, "429": 1},
		before:  metrics{goroutines: 5},
		after:   metrics{goroutines: 5},
		lastEnd: "200",
	}
}

func TestVerdict(t *testing.T) {
	tests := []struct {
		name string
		harm func(*figures)
		want string // a part of the error, none if empty
	}{
		{"sound", func(*figures) {}, ""},
		{"the server failed", func(f *figures) { f.server["500"] = 2 }, "2 calls with 500"},
		{"a sweep without an answer", func(f *figures) { f.sweeps.StatusCodes["0"] = 1 }, "status 0"},
		{"one without the storms that failed", func(f *figures) { f.calm.StatusCodes["503"] = 1 }, "status 503"},
		{"a sweep that failed", func(f *figures) { f.sweeps.StatusCodes["503"] = 1 }, "status 503"},
		{"a storm got 5xx", func(f *figures) { f.ends[0]["500"] = 9 }, "bad: 9 ended by 500"},
		{"a storm hung", func(f *figures) { f.ends[0]["nothing for 40s"] = 1 }, "bad: 1 ended by nothing"},
		{"a goroutine is left", func(f *figures) { f.after[goroutines] = 6 }, "left over"},
		{"the heap grew", func(f *figures) { f.peakHeap = 1e9 }, "1000 MB"},
		{"a call is left", func(f *figures) { f.after[running] = 1 }, "left over"},
		{"the call that ran was cut off", func(f *figures) { f.lastEnd = "EOF" }, "with EOF, want 200"},
		{"the server did not stop", func(f *figures) { f.stopErr = errors.New("stuck") }, "stuck"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			f := sound()
			tt.harm(f)
			err := f.verdict()
			if (tt.want == "") != (err == nil) || err != nil && !strings.Contains(err.Error(), tt.want) {
				t.Errorf("verdict = %v, want %q in it", err, tt.want)
			}
		})
	}
}

func TestFiguresAsTables(t *testing.T) {
	got := sound().String()
	for _, want := range []string{"| 1000 sweeps/s for 1m0s,", "| 200: 4 | 200: 4, 429: 1 |", "| 100.0 %, 0 a second | 80.0 %, 0 a second |", "| 0.50 / 0.25 |", "| bad | 2 | 400: 3, closed: 2, left: 1 |"} {
		if !strings.Contains(got, want) {
			t.Errorf("tables do not hold %q:\n%s", want, got)
		}
	}
}
