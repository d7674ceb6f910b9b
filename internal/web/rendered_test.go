package web

import (
	"compress/gzip"
	"io"
	"net/http"
	"strings"
	"testing"
)

func TestDocumentIsPacked(t *testing.T) {
	h := newTestHandler(t, Config{Assets: front()})
	plain := bodyOf(t, get(h, "/"))
	r := get(h, "/", "Accept-Encoding", "gzip, br")
	if got := r.Header.Get("Content-Encoding"); got != "gzip" {
		t.Fatalf("encoding %q, want gzip", got)
	}
	unpacked, err := gzip.NewReader(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	body, err := io.ReadAll(unpacked)
	if err != nil || string(body) != plain {
		t.Errorf("the packed document is not the plain one (%v)", err)
	}
}

func TestDocumentIsRenderedOnce(t *testing.T) {
	h := newTestHandler(t, Config{Assets: front()})
	first := get(h, "/")
	document := bodyOf(t, first)
	if again := get(h, "/", "If-None-Match", first.Header.Get("ETag")); again.StatusCode != http.StatusNotModified {
		t.Errorf("the document asked for again = %d, want 304", again.StatusCode)
	}
	for range 20 { // go-app writes attributes in any order
		if bodyOf(t, get(h, "/")) != document {
			t.Fatal("the document differs from one request to the next")
		}
	}
}

func TestRenderedReportsAFailure(t *testing.T) {
	_, err := rendered(http.NotFoundHandler(), "/none")
	if err == nil || !strings.Contains(err.Error(), "/none ended with status 404") {
		t.Errorf("rendered of nothing: %v, want the path and the status", err)
	}
}
