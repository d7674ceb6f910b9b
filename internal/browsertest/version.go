package browsertest

import (
	"io/fs"
	"testing"
	"testing/fstest"

	"toewright/internal/web"
)

// Built returns the built front end, to be changed.
func Built(t testing.TB) fstest.MapFS {
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
	return files
}

// Put puts a text in place of a file of the front end, in all of its forms.
func Put(files fstest.MapFS, name, text string) {
	for _, form := range []string{".br", ".gz"} {
		delete(files, name+form)
	}
	files[name] = &fstest.MapFile{Data: []byte(text)}
}

// Version returns the built front end with a style sheet that gives it a name, and that name
// in the worker's script too.
func Version(t testing.TB, name string) fstest.MapFS {
	t.Helper()
	files := Built(t)
	Put(files, "page.css", ":root { --version: "+name+" }")
	Put(files, "worker.js", string(files["worker.js"].Data)+"// version "+name)
	return files
}

// ShownVersion is an expression for the version of the style sheet in use.
const ShownVersion = `getComputedStyle(document.documentElement).getPropertyValue("--version").trim()`

// AskForUpdate makes the browser look for a new version, and returns what came of it.
const AskForUpdate = `navigator.serviceWorker.getRegistration().then((r) => r.update()).then(
	() => "found", (err) => "failed")`
