package api

import (
	"compress/gzip"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
)

// TestAnswersArePacked: who accepts gzip gets the same bytes in a third of the length, and
// who does not gets them as they are; what is refused is never packed.
func TestAnswersArePacked(t *testing.T) {
	h := New(Config{})
	ask := func(path, accept string) *httptest.ResponseRecorder {
		r := httptest.NewRequest(http.MethodPost, base+path, strings.NewReader(saloon))
		r.Header.Set("Content-Type", "application/json")
		r.Header.Set("Accept-Encoding", accept)
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		return w
	}
	for _, path := range []string{"sweep", "report"} {
		plain := ask(path, "")
		for _, accept := range []string{"gzip", "gzip, deflate, br, zstd", "br, GZIP;q=0.5"} {
			w := ask(path, accept)
			z, err := gzip.NewReader(w.Body)
			length := w.Body.Len()
			if err != nil || w.Header().Get("Content-Encoding") != "gzip" || w.Header().Get("Vary") != "Accept-Encoding" {
				t.Fatalf("%s, accepting %s: %v, headers %v", path, accept, err, w.Header())
			}
			text, err := io.ReadAll(z)
			if err != nil || string(text) != plain.Body.String() {
				t.Errorf("%s, accepting %s: %v, %d bytes unpacked, want the %d that go out plain", path, accept, err, len(text), plain.Body.Len())
			}
			if length > plain.Body.Len()/2 {
				t.Errorf("%s: %d bytes packed of %d", path, length, plain.Body.Len())
			}
		}
		for _, accept := range []string{"br", "gzip;q=0", "identity"} {
			if w := ask(path, accept); w.Header().Get("Content-Encoding") != "" || w.Body.String() != plain.Body.String() {
				t.Errorf("%s, accepting %s, goes out as %q", path, accept, w.Header().Get("Content-Encoding"))
			}
		}
	}
	if w := ask("sweep?motion=up", "gzip"); w.Header().Get("Content-Encoding") != "" || !strings.HasPrefix(w.Body.String(), `{"error"`) {
		t.Errorf("a refusal goes out as %q", w.Header().Get("Content-Encoding"))
	}
}

// TestAnswersOnOneMachineGoOutPlain: who asks on this machine itself accepts gzip as others
// do, and gets the answer as it is, but not what a proxy here passes on.
func TestAnswersOnOneMachineGoOutPlain(t *testing.T) {
	h := New(Config{})
	for _, tt := range []struct{ name, from, host, header, want string }{
		{"from here", "127.0.0.1:4000", "localhost:8321", "", ""},
		{"from here by IPv6", "[::1]:4000", "[::1]:8321", "", ""},
		{"by a proxy", "127.0.0.1:4000", "localhost:8321", "X-Forwarded-For", "gzip"},
		{"by a proxy that passes Host on", "127.0.0.1:4000", "toe.example", "", "gzip"},
		{"from elsewhere", "192.0.2.7:4000", "localhost:8321", "", "gzip"},
	} {
		r := httptest.NewRequest(http.MethodPost, base+"sweep", strings.NewReader(saloon))
		r.RemoteAddr, r.Host = tt.from, tt.host
		r.Header.Set("Content-Type", "application/json")
		r.Header.Set("Accept-Encoding", "gzip")
		if tt.header != "" {
			r.Header.Set(tt.header, "198.51.100.1")
		}
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		if got := w.Header().Get("Content-Encoding"); w.Code != http.StatusOK || got != tt.want {
			t.Errorf("%s: %d, coded %q, want %q", tt.name, w.Code, got, tt.want)
		}
	}
}
