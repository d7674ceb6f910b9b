package browsertest

import (
	"io/fs"
	"testing"
	"testing/fstest"

	"toewright/internal/web"
)

// Version returns the built front end with a style sheet that gives it a name, and that name
// in the worker's script too.
func Version(t testing.TB, name string) fstest.MapFS {
	t.Helper()
	files := fstest.MapFS{}
	built := web.Assets()
	entries, err := fs.ReadDir(built, ".")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		data, err := fs.ReadFile(built, e.Name())
		if err != nil {
			t.Fatal(err)
		}
		files[e.Name()] = &fstest.MapFile{Data: data}
	}
	for _, form := range []string{".br", ".gz"} {
		delete(files, "page.css"+form)
		delete(files, "worker.js"+form)
	}
	files["page.css"] = &fstest.MapFile{Data: []byte(":root { --version: " + name + " }")}
	files["worker.js"] = &fstest.MapFile{Data: append(files["worker.js"].Data, "// version "+name...)}
	return files
}

// ShownVersion is an expression for the version of the style sheet in use.
const ShownVersion = `getComputedStyle(document.documentElement).getPropertyValue("--version").trim()`

// AskForUpdate makes the browser look for a new version, and returns what came of it.
const AskForUpdate = `navigator.serviceWorker.getRegistration().then((r) => r.update()).then(
	() => "found", (err) => "failed")`
