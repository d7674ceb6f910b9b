package web

import (
	"bytes"
	"fmt"
	"html"
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
)

// WriteSite writes the page to a folder, which is made if there is none, for a host
// that serves nothing but files. It works under any path. Files that stand there
// under other names are left. The calls under /api/ are no part of it: the page does
// not need them.
//
// As such a host sends no headers of ours, the document states its policy itself.
// Nil files are the front end that was built in.
func WriteSite(folder string, files fs.FS) error {
	if files == nil {
		files = Assets()
	}
	all, err := loadAssets(files)
	if err != nil {
		return err
	}
	if !all.built() {
		return fmt.Errorf("web: the front end has not been built: run make build, then write the site again")
	}
	shell := newShell(all, policyTags()...)
	for name, path := range siteFiles() {
		body, err := rendered(shell, path)
		if err != nil {
			return err
		}
		if err := writeFile(folder, name, body); err != nil {
			return err
		}
	}
	return all.write(folder)
}

// policyTags returns what stands in for the headers.
func policyTags() []string {
	return []string{
		`<meta http-equiv="Content-Security-Policy" content="` + html.EscapeString(documentPolicy) + `">`,
		`<meta name="referrer" content="no-referrer">`,
	}
}

// siteFiles returns the path at which go-app's handler has each file of a site that
// is no asset.
func siteFiles() map[string]string {
	files := map[string]string{"index.html": "/"}
	for _, path := range scriptPaths {
		files[path[1:]] = path
	}
	return files
}

// write writes all forms of all files below a folder, as the document names them.
func (a assets) write(folder string) error {
	for name, file := range a {
		for enc, form := range file.forms {
			if err := writeFile(folder, "web/"+name+suffixes[enc], form.data); err != nil {
				return err
			}
		}
	}
	manifest := a["manifest.webmanifest"].forms[identity].data
	return writeFile(folder, "manifest.webmanifest", manifest)
}

func writeFile(folder, name string, data []byte) error {
	path := filepath.Join(folder, filepath.FromSlash(name))
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return fmt.Errorf("web: %w", err)
	}
	if err := os.WriteFile(path, data, 0o644); err != nil {
		return fmt.Errorf("web: %w", err)
	}
	return nil
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
