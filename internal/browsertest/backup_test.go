package browsertest

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/chromedp/chromedp"
)

// countPromises is a script that counts how often the browser is asked not to remove what is
// kept, and promises it.
const countPromises = `(() => {
	let asked = false;
	window.asked = 0;
	StorageManager.prototype.persist = async () => { window.asked++; return asked = true; };
	StorageManager.prototype.persisted = async () => asked;
})()`

// studyNames is an expression for the names of what is kept.
const studyNames = `[...document.querySelectorAll("#studies strong")].map((e) => e.textContent)`

// TestAllStudiesInOneFile takes all studies to another browser by a file, on a desk and on a
// phone: they are all there, beside what was there before. A damaged file changes nothing. The
// browser is asked to keep them when there is one, and not before.
func TestAllStudiesInOneFile(t *testing.T) {
	for name, o := range map[string]Options{"desk": {}, "phone": {Width: 390, Height: 844, Touch: true, Dark: true}} {
		t.Run(name, func(t *testing.T) {
			o.Before = countPromises
			page := Open(t, o)
			openPanel(page, "study")
			page.WaitTrue(says("#keeping", "it may remove them when it is short of room"))
			if n := Eval[int](page, `asked`); n != 0 {
				t.Errorf("the browser was asked %d times before anything is kept", n)
			}
			for _, study := range []string{"one", "two"} {
				page.openFile(named(t, study))
			}
			openPanel(page, "study")
			page.WaitTrue(says("#keeping", "it has promised not to remove them"))
			if n := Eval[int](page, `asked`); n != 1 {
				t.Errorf("the browser was asked %d times, want once", n)
			}
			page.Shot("keeping " + name)
			Eval[chromedp.Void](page, catchFiles)
			click(page, "#save-all")
			page.WaitTrue(`!!` + caught("application/json"))
			file := Eval[string](page, caught("application/json")+`.text()`)
			page.WaitTrue(says("#message", "One file of all studies, 2,"))

			other := Open(t, o)
			other.openFile(named(t, "one"))
			openPanel(other, "study")
			typeInto(other, "#study-revision", "C")
			other.waitKept("saved")
			choose := func(text string) {
				t.Helper()
				path := filepath.Join(t.TempDir(), "all.json")
				if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
					t.Fatal(err)
				}
				other.Do(chromedp.SetUploadFiles("#open-file", []string{path}))
			}
			choose(file[:len(file)*2/3])
			other.WaitTrue(says("#file-fault", "all.json was not opened, and nothing has changed: it is damaged"))
			if got := Eval[[]string](other, studyNames); !slices.Equal(got, []string{"one"}) {
				t.Errorf("after a damaged file %q are kept, want what was there", got)
			}
			other.Shot("damaged file " + name)
			choose(file)
			other.WaitTrue(says("#message", "studies that came beside yours: 2"))
			other.WaitTrue(`JSON.stringify(` + studyNames + `) === '["one","one 2","two"]'`)
			if got := Eval[string](other, `document.querySelector("#study-revision").value`); got != "C" {
				t.Errorf("the study that is open has revision %q, want its own, C", got)
			}
			other.Shot("all studies " + name)
			other.waitKept("saved")
			other.Reload()
			openPanel(other, "study")
			other.WaitTrue(studyNames + `.length === 3`)
		})
	}
}
