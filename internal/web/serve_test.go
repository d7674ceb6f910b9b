package web

import (
	"net/http"
	"testing"
	"testing/fstest"
)

func TestProgramEncodings(t *testing.T) {
	h := newTestHandler(t, Config{Assets: front()})
	tests := []struct{ accept, encoding, body string }{
		{"br, gzip", "br", "brotli"},
		{"gzip", "gzip", "gzip"},
		{"", "", "program"},
	}
	tags := map[string]bool{}
	for _, tt := range tests {
		r := get(h, "/web/app.wasm", "Accept-Encoding", tt.accept)
		if got := r.Header.Get("Content-Encoding"); got != tt.encoding {
			t.Errorf("accept %q: encoding %q, want %q", tt.accept, got, tt.encoding)
		}
		if got := bodyOf(t, r); got != tt.body || r.ContentLength != int64(len(tt.body)) {
			t.Errorf("accept %q: body %q of length %d, want %q", tt.accept, got, r.ContentLength, tt.body)
		}
		if got := r.Header.Get("Vary"); got != "Accept-Encoding" {
			t.Errorf("accept %q: Vary %q, want Accept-Encoding", tt.accept, got)
		}
		tags[r.Header.Get("ETag")] = true
	}
	if len(tags) != len(tests) {
		t.Errorf("ETags %v, want one for each encoding", tags)
	}
}

func TestProgramNotModified(t *testing.T) {
	h := newTestHandler(t, Config{Assets: front()})
	tag := get(h, "/web/app.wasm").Header.Get("ETag")
	tests := []struct {
		name, header string
		want         int
	}{
		{name: "same", header: tag, want: http.StatusNotModified},
		{name: "same, weak", header: "W/" + tag, want: http.StatusNotModified},
		{name: "one of several", header: `"other", ` + tag, want: http.StatusNotModified},
		{name: "any", header: "*", want: http.StatusNotModified},
		{name: "other", header: `"other"`, want: http.StatusOK},
		{name: "none", header: "", want: http.StatusOK},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := get(h, "/web/app.wasm", "If-None-Match", tt.header).StatusCode; got != tt.want {
				t.Errorf("If-None-Match %s: status %d, want %d", tt.header, got, tt.want)
			}
		})
	}
}

func TestVersionFollowsContent(t *testing.T) {
	version := func(files fstest.MapFS) string {
		a, err := loadAssets(files)
		if err != nil {
			t.Fatal(err)
		}
		return a.version()
	}
	changed, renamed, slower := front(), front(), front()
	changed["boot.js"].Data = []byte("other")
	renamed["boot2.js"] = renamed["boot.js"]
	delete(renamed, "boot.js")
	delete(slower, "app.wasm.br")
	tests := []struct {
		name  string
		files fstest.MapFS
		same  bool
	}{
		{name: "same files", files: front(), same: true},
		{name: "a form less", files: slower, same: true},
		{name: "a file changed", files: changed, same: false},
		{name: "a file renamed", files: renamed, same: false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := version(tt.files) == version(front()); got != tt.same {
				t.Errorf("same version: %v, want %v", got, tt.same)
			}
		})
	}
}
