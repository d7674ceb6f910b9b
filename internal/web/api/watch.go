package api

import (
	"log/slog"
	"net/http"
	"time"
)

// watched counts and logs the requests of a call: which call, how it ended, how
// long it took and how large the answer was; nothing of what was asked.
func (h *handler) watched(name string, next http.HandlerFunc) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		began := time.Now()
		seen := &recorder{ResponseWriter: w, status: http.StatusOK}
		next(seen, r)
		took := time.Since(began)
		h.metrics.count(name, seen.status, took)
		h.cfg.Logger.LogAttrs(r.Context(), slog.LevelInfo, "call",
			slog.String("call", name), slog.Int("status", seen.status),
			slog.Float64("ms", took.Seconds()*1e3), slog.Int64("bytes", seen.bytes))
	}
}

// recorder notes what is sent.
type recorder struct {
	http.ResponseWriter
	status int
	bytes  int64
}

// WriteHeader implements [http.ResponseWriter]. A status that is only for the log
// is not sent: the caller is gone.
func (r *recorder) WriteHeader(status int) {
	r.status = status
	if status != statusGone {
		r.ResponseWriter.WriteHeader(status)
	}
}

// Write implements [http.ResponseWriter].
func (r *recorder) Write(p []byte) (int, error) {
	n, err := r.ResponseWriter.Write(p)
	r.bytes += int64(n)
	return n, err
}

// Unwrap lets [http.ResponseController] reach the connection.
func (r *recorder) Unwrap() http.ResponseWriter { return r.ResponseWriter }
