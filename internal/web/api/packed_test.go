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
