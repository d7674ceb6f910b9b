package web

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"net/http"
	"path"

	"toewright/internal/web/coding"
)

// renderShell returns what the page has beside the files under /web/, by path: the document,
// which states a policy if that is not empty, and scripts. All of it is always the same, so
// it is rendered once.
func renderShell(files assets, policy string) (map[string]*asset, error) {
	page, err := newSet(files)
	if err != nil {
		return nil, err
	}
	worker := page.complete(policy)
	return map[string]*asset{
		"/": page["./"], workerScript: worker,
		appScript: page[appScript[1:]], glueScript: page[glueScript[1:]],
	}, nil
}

// renderedAsset returns the file of a path, as itself and with gzip.
func renderedAsset(name string, body []byte) *asset {
	if path.Ext(name) == "" {
		name = "index.html"
	}
	return &asset{contentType(name), map[coding.Encoding]form{
		coding.Identity: newForm(body),
		coding.Gzip:     newForm(gzip9(body)),
	}}
}

func gzip9(data []byte) []byte {
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		panic(err) // The level is a constant that exists.
	}
	w.Write(data) // A bytes.Buffer takes all.
	w.Close()
	return b.Bytes()
}

// rendered returns what a handler answers to a GET.
func rendered(h http.Handler, path string) ([]byte, error) {
	r, err := http.NewRequest(http.MethodGet, path, nil)
	if err != nil {
		return nil, err
	}
	answer := answer{header: http.Header{}, status: http.StatusOK}
	h.ServeHTTP(&answer, r)
	if answer.status != http.StatusOK {
		return nil, fmt.Errorf("web: rendering %s ended with status %d", path, answer.status)
	}
	return answer.body.Bytes(), nil
}

// answer keeps what a handler writes.
type answer struct {
	header http.Header
	status int
	body   bytes.Buffer
}

// Header implements [http.ResponseWriter].
func (a *answer) Header() http.Header { return a.header }

// WriteHeader implements [http.ResponseWriter].
func (a *answer) WriteHeader(status int) { a.status = status }

// Write implements [http.ResponseWriter].
func (a *answer) Write(p []byte) (int, error) { return a.body.Write(p) }
