package web

import (
	"crypto/sha256"
	"embed"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"

	"toewright/internal/web/coding"
)

// The prefix "all:" takes in the file with a leading dot that keeps the folder in
// a clean checkout; without any file the program would not build.
//
//go:embed all:dist
var embedded embed.FS

// Assets returns the front end that was built in.
func Assets() fs.FS {
	sub, err := fs.Sub(embedded, "dist")
	if err != nil {
		panic(err) // The folder is named above.
	}
	return sub
}

// programName is the file that the front end cannot be without.
const programName = "app.wasm"

// manifestName is the file that describes the page to a system that installs it.
const manifestName = "manifest.webmanifest"

// suffixes are added to the name of a file for its compressed forms.
var suffixes = map[coding.Encoding]string{coding.Brotli: ".br", coding.Gzip: ".gz"}

// Built reports whether the front end was built before this program was.
func Built() bool {
	_, err := fs.Stat(Assets(), programName)
	return err == nil
}

// assets are the files under /web/, by name.
type assets map[string]*asset

// asset is a file in each encoding that there is, the identity always.
type asset struct {
	contentType string
	forms       map[coding.Encoding]form
}

// form is a file in one encoding.
type form struct {
	data []byte
	sum  [sha256.Size]byte // of data
	etag string            // of this encoding alone, with its quotes
}

// newForm returns a form of some data, whose digest is taken here and nowhere else: it takes
// longer than all else of a start.
func newForm(data []byte) form {
	sum := sha256.Sum256(data)
	return form{data, sum, fmt.Sprintf(`"%x"`, sum[:12])}
}

// loadAssets reads all files at the top of a folder.
func loadAssets(folder fs.FS) (assets, error) {
	entries, err := fs.ReadDir(folder, ".")
	if err != nil {
		return nil, fmt.Errorf("web: reading the front end: %w", err)
	}
	all := assets{}
	for _, e := range entries {
		if e.IsDir() || strings.HasPrefix(e.Name(), ".") {
			continue
		}
		data, err := fs.ReadFile(folder, e.Name())
		if err != nil {
			return nil, fmt.Errorf("web: reading the front end: %w", err)
		}
		name, enc := split(e.Name())
		all.add(name, enc, data)
	}
	return all, all.check()
}

// split returns the name of the file that a file is a form of, and its encoding.
func split(file string) (name string, enc coding.Encoding) {
	for enc, suffix := range suffixes {
		if name, ok := strings.CutSuffix(file, suffix); ok {
			return name, enc
		}
	}
	return file, coding.Identity
}

func (a assets) add(name string, enc coding.Encoding, data []byte) {
	if a[name] == nil {
		a[name] = &asset{contentType: contentType(name), forms: map[coding.Encoding]form{}}
	}
	a[name].forms[enc] = newForm(data)
}

// check returns an error for a compressed form without its file.
func (a assets) check() error {
	for name, file := range a {
		if _, ok := file.forms[coding.Identity]; !ok {
			return fmt.Errorf("web: %s stands there compressed but not as itself; build the front end again", name)
		}
	}
	return nil
}

// built reports whether the front end is there.
func (a assets) built() bool { return a[programName] != nil }

// version returns a name for the content of all files.
func (a assets) version() string {
	h := sha256.New()
	for _, name := range slices.Sorted(maps.Keys(a)) {
		fmt.Fprintln(h, name, a[name].forms[coding.Identity].etag)
	}
	return fmt.Sprintf("%x", h.Sum(nil)[:8])
}

// contentTypes does not leave the choice to the machine: a wrong type for the
// program or a script stops the page.
var contentTypes = map[string]string{
	".css":         "text/css; charset=utf-8",
	".html":        "text/html; charset=utf-8",
	".js":          "text/javascript; charset=utf-8",
	".png":         "image/png",
	".svg":         "image/svg+xml",
	".wasm":        "application/wasm",
	".webmanifest": "application/manifest+json",
}

func contentType(name string) string {
	if t, ok := contentTypes[path.Ext(name)]; ok {
		return t
	}
	return "application/octet-stream"
}
