package api

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
)

// BenchmarkCall is what a call costs the server, without the network.
func BenchmarkCall(b *testing.B) {
	for _, call := range []string{"sweep", "compare"} {
		b.Run(call, func(b *testing.B) {
			h := New(Config{})
			b.ReportAllocs()
			for b.Loop() {
				w := httptest.NewRecorder()
				r := httptest.NewRequest(http.MethodPost, base+call, strings.NewReader(saloon))
				r.Header.Set("Content-Type", "application/json")
				h.ServeHTTP(w, r)
				if w.Code != http.StatusOK {
					b.Fatalf("%s: %d %s", call, w.Code, w.Body)
				}
			}
		})
	}
}
