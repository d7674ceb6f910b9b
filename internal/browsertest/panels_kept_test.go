package browsertest

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
)

// typeInto types a text into a field and leaves it.
func typeInto(p *Page, selector, text string) {
	p.t.Helper()
	p.WaitTrue(`!!document.querySelector(` + quote(selector) + `)`)
	Eval[chromedp.Void](p, `(() => {
		const field = document.querySelector(`+quote(selector)+`);
		field.value = `+quote(text)+`;
		field.dispatchEvent(new Event("change", {bubbles: true}));
	})()`)
}

// chooseFile chooses a file in the field of an id.
func chooseFile(p *Page, id, path string) {
	p.t.Helper()
	p.WaitTrue(`!!document.getElementById(` + quote(id) + `)`)
	p.Do(chromedp.SetUploadFiles(chromedp.CSS("#"+id), []string{path}))
}

// pressControl presses a key with Ctrl on the page itself.
func pressControl(p *Page, key string) {
	p.t.Helper()
	Eval[chromedp.Void](p, `void document.body.dispatchEvent(new KeyboardEvent("keydown", {key: `+quote(key)+`, ctrlKey: true, bubbles: true, cancelable: true}))`)
}

// TestKeptThroughReload changes the demo, reloads the page and finds the change, with
// the server gone too.
func TestKeptThroughReload(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "compare")
	typeInto(page, "#selected-car .slider input", "-11.5")
	page.WaitTrue(`document.querySelector("#kept").textContent === "saved"`)
	page.WaitOfflineReady()
	page.Offline()
	page.Reload()
	page.WaitTrue(`document.querySelector("#selected-car .slider input")?.value === "−11.50"`)
	// The panels follow the sheet by a frame: a press before that is lost, and pressed again.
	page.WaitTrue(`(document.querySelector("#study-menu[aria-expanded=false]")?.click(), document.querySelectorAll("#studies li").length === 1)`)
}

// TestUndoByKeys takes a change back and makes it again.
func TestUndoByKeys(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "compare")
	const field = `document.querySelector("#selected-car .slider input")?.value`
	page.WaitTrue(field + ` !== undefined`)
	before := Eval[string](page, field)
	typeInto(page, "#selected-car .slider input", "3,5")
	page.WaitTrue(field + ` === "3.50"`)
	pressControl(page, "z")
	page.WaitTrue(field + ` === ` + quote(before))
	pressControl(page, "y")
	page.WaitTrue(field + ` === "3.50"`)
}

// TestDamagedFileIsRefused chooses a file that was cut off: it is refused in words, and
// the open study stays as it was.
func TestDamagedFileIsRefused(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "compare")
	typeInto(page, "#selected-car .slider input", "-9")
	openPanel(page, "study")
	typeInto(page, "#study-name", "Not to be lost")
	path := filepath.Join(t.TempDir(), "cut-off.json")
	if err := os.WriteFile(path, []byte(`{"format": "toewright/1", "name": "cut`), 0o600); err != nil {
		t.Fatal(err)
	}
	chooseFile(page, "open-file", path)
	page.WaitTrue(`document.querySelector("#file-fault")?.textContent.startsWith("cut-off.json was not opened")`)
	page.Shot("damaged file")
	page.WaitTrue(`document.querySelector("#study-name").value === "Not to be lost"`)
}

// TestLinkOpensTheStudy makes a link of a study and opens it in the same browser: the
// study is there, and what was open before is kept beside it.
func TestLinkOpensTheStudy(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "study")
	typeInto(page, "#study-name", "Sent by link")
	click(page, "#make-link")
	page.WaitTrue(`!!document.querySelector("#link")`)
	link := Eval[string](page, `document.querySelector("#link").value`)
	page.Do(chromedp.Navigate("about:blank"), chromedp.Navigate(link))
	page.WaitRunning()
	page.WaitTrue(`document.querySelector("#study-menu strong")?.textContent === "Sent by link"`)
	page.WaitTrue(`location.hash === ""`)
}

// TestStopKeepsTheBest stops a search at once: the page answers, with what there is.
func TestStopKeepsTheBest(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "search")
	click(page, "#usual-setups")
	click(page, "#find")
	click(page, "#find-stop")
	page.WaitTrue(`!document.querySelector("#find-stop") && !!(document.querySelector("#answer") || document.querySelector(".result .problem"))`)
}

func TestPalette(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "car")
	pressControl(page, "k")
	page.WaitTrue(`document.activeElement?.id === "palette-text"`)
	page.Shot("palette")
	page.Do(chromedp.KeyEvent("find"), chromedp.KeyEvent("\r"))
	page.WaitTrue(`document.querySelector("#step-find").getAttribute("aria-selected") === "true"`)
}
