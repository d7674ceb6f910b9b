package browsertest

import (
	"io/fs"
	"testing"
	"testing/fstest"

	"toewright/internal/web"
)

// version returns the built front end with a style sheet that gives it a name.
func version(t *testing.T, name string) fstest.MapFS {
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
	}
	files["page.css"] = &fstest.MapFile{Data: []byte(":root { --version: " + name + " }")}
	return files
}

// shownVersion is an expression for the version of the style sheet in use.
const shownVersion = `getComputedStyle(document.documentElement).getPropertyValue("--version").trim()`

// askForUpdate makes the browser look for a new version, and returns what came of it.
const askForUpdate = `navigator.serviceWorker.getRegistration().then((r) => r.update()).then(
	() => "found", (err) => "failed")`

// change puts another version on the server, at the same address.
func change(page *Page, files fstest.MapFS) {
	page.Stop()
	page.Use(web.Config{Assets: files})
	page.Start()
}

func TestUpdateWaitsForTheReader(t *testing.T) {
	page := Open(t, Options{Web: web.Config{Assets: version(t, "old")}})
	page.WaitOfflineReady()
	change(page, version(t, "new"))
	Eval[string](page, askForUpdate)
	page.WaitTrue(`toewright.updateWaiting`)

	page.Reload()
	page.WaitText("#solver", "ready")
	if got := Eval[string](page, shownVersion); got != "old" {
		t.Errorf("version after a reload = %q, want old, until the reader agrees", got)
	}
	page.WaitTrue(`toewright.updateWaiting`)
	Eval[any](page, `toewright.update(), null`)
	page.WaitTrue(shownVersion + ` === "new"`)
	page.WaitRunning()
	page.Offline()
	page.Reload()
	page.WaitText("#solver", "ready")
	if got := Eval[string](page, shownVersion); got != "new" {
		t.Errorf("version without the server = %q, want new", got)
	}
}

func TestFailedUpdateKeepsThePage(t *testing.T) {
	page := Open(t, Options{Web: web.Config{Assets: version(t, "old")}})
	page.WaitOfflineReady()
	page.Forgive() // The missing file is to be complained of.
	page.Stop()
	page.Use(web.Config{Assets: version(t, "broken")})
	page.Lose("/web/worker.js")
	page.Start()
	Eval[string](page, askForUpdate)
	page.WaitTrue(`navigator.serviceWorker.getRegistration().then((r) => !r.installing && !r.waiting)`)
	page.Offline()
	page.Reload()
	page.WaitText("#solver", "ready")
	if got := Eval[string](page, shownVersion); got != "old" {
		t.Errorf("version after a failed update = %q, want old", got)
	}
	if got := Eval[int](page, `caches.keys().then((names) => names.length)`); got != 1 {
		t.Errorf("caches = %d, want 1: nothing may be left of the failed update", got)
	}
}
