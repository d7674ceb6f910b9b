package api

import (
	"bytes"
	"context"
	"errors"
	"log/slog"
	"math"
	"net/http"
	"strings"
	"testing"

	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// answering is a call with one answer.
func answering(result any, err error) calls.Call {
	return calls.Call{Name: "odd", New: func() *calls.Request {
		return &calls.Request{Ask: func(context.Context, *study.Document, func(engine.Progress)) (any, error) { return result, err }}
	}}
}

// TestAnswersThatCannotBeWritten: figures that are no numbers are the study's fault, and
// said; a mistake of ours is logged, and its words, which are Go's, go no further.
func TestAnswersThatCannotBeWritten(t *testing.T) {
	tests := []struct {
		name   string
		call   calls.Call
		want   int
		part   string
		logged string
	}{
		{"no number", answering(struct{ X float64 }{math.NaN()}, nil), http.StatusUnprocessableEntity, "out of proportion", ""},
		{"no bound", answering([]float64{math.Inf(1)}, nil), http.StatusUnprocessableEntity, "out of proportion", ""},
		{"no JSON", answering(make(chan int), nil), http.StatusInternalServerError, "the program failed", "chan int"},
		{"no error of ours", answering(nil, errors.New("json: oops at 0x123")), http.StatusInternalServerError, "the program failed", "oops"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var log bytes.Buffer
			h := newHandler(Config{Logger: slog.New(slog.NewJSONHandler(&log, nil))})
			r := post(t, h.answer(tt.call), "odd", saloon)
			f := readFault(t, r)
			if r.StatusCode != tt.want || !strings.Contains(f.Message, tt.part) || strings.Contains(f.Message, "json:") {
				t.Errorf("%d %q, want %d and %q", r.StatusCode, f.Message, tt.want, tt.part)
			}
			if !strings.Contains(log.String(), tt.logged) {
				t.Errorf("the log says %q, want %q", log.String(), tt.logged)
			}
		})
	}
}
