package browsertest

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"hash/crc32"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"time"
)

// packedHost serves the files of a folder, each in its Brotli form if there is one, else
// text with gzip, as hosts do, and counts the bytes.
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
	if kind := typeOf(name); kind != "" {
		h.pack(w, r, name, kind)
		return
	}
	http.ServeFile(counted{w, &h.sent}, r, name)
}

// pack serves a file with gzip.
func (h *packedHost) pack(w http.ResponseWriter, r *http.Request, name, kind string) {
	data, err := os.ReadFile(name)
	if err != nil {
		http.NotFound(w, r)
		return
	}
	w.Header().Set("Content-Encoding", "gzip")
	w.Header().Set("Content-Type", kind)
	w.Header().Set("ETag", fmt.Sprintf(`"%08x"`, crc32.ChecksumIEEE(data)))
	var packed bytes.Buffer
	z := gzip.NewWriter(&packed)
	z.Write(data) // A buffer takes all.
	z.Close()
	http.ServeContent(counted{w, &h.sent}, r, "", time.Time{}, bytes.NewReader(packed.Bytes()))
}

// typeOf returns the type of a file, which its packed form does not show.
func typeOf(name string) string {
	return map[string]string{
		".css": "text/css", ".js": "text/javascript", ".svg": "image/svg+xml",
		".wasm": "application/wasm", ".webmanifest": "application/manifest+json", ".html": "text/html",
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
