package browsertest

import (
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
)

// packedHost serves the files of a folder, each in its Brotli form if there is one,
// and counts the bytes.
type packedHost struct {
	folder string
	sent   atomic.Int64
}

// ServeHTTP implements [http.Handler].
func (h *packedHost) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	name := filepath.Join(h.folder, filepath.FromSlash(r.URL.Path))
	if strings.HasSuffix(r.URL.Path, "/") {
		name = filepath.Join(name, "index.html")
	}
	w.Header().Set("Cache-Control", "no-cache")
	if _, err := os.Stat(name + ".br"); err == nil && strings.Contains(r.Header.Get("Accept-Encoding"), "br") {
		w.Header().Set("Content-Encoding", "br")
		w.Header().Set("Content-Type", typeOf(name))
		name += ".br"
	}
	http.ServeFile(counted{w, &h.sent}, r, name)
}

// typeOf returns the type of a file, which its packed form does not show.
func typeOf(name string) string {
	return map[string]string{
		".css": "text/css", ".js": "text/javascript", ".svg": "image/svg+xml",
		".wasm": "application/wasm", ".webmanifest": "application/manifest+json",
	}[filepath.Ext(name)]
}

// counted counts the bytes of bodies.
type counted struct {
	http.ResponseWriter
	sent *atomic.Int64
}

// Write implements [http.ResponseWriter].
func (c counted) Write(p []byte) (int, error) {
	n, err := c.ResponseWriter.Write(p)
	c.sent.Add(int64(n))
	return n, err
}
