package browsertest

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"toewright/internal/engine"
	"toewright/internal/report"
	"toewright/internal/study"
)

// tapeQuestion is what is asked to be measured.
const tapeQuestion = `(document.querySelector("#tape-question")?.textContent ?? "")`

// TestTapeLeadsOn measures a car by tape on a phone: marks, a measure that cannot be reached, one
// that shows what it does while it is typed, a reload in the middle of it, and the points fitted.
func TestTapeLeadsOn(t *testing.T) {
	page := Open(t, Options{Width: 390, Height: 844, Touch: true})
	page.WaitOfflineReady()
	openPanel(page, "tape")
	click(page, "#tape-begin")
	page.WaitTrue(tapeQuestion + ` !== ""`)
	page.WaitTrue(`!!document.querySelector("path.measure")`)
	first := Eval[string](page, tapeQuestion)
	click(page, "#tape-skip")
	page.WaitTrue(tapeQuestion + ` !== "" && ` + tapeQuestion + ` !== ` + quote(first))
	second := Eval[string](page, tapeQuestion)
	status := Eval[string](page, `document.querySelector("#tape-status").textContent`)
	Eval[chromedp.Void](page, `void document.querySelector("#tape-value").focus()`)
	keys(page, "203")
	page.WaitTrue(`document.querySelector("#tape-status").textContent !== ` + quote(status)) // the band follows what is typed
	page.Reload()
	page.WaitTrue(`document.querySelector("#tape-value")?.value === "203"`)
	page.WaitTrue(tapeQuestion + ` === ` + quote(second))
	Eval[chromedp.Void](page, `void document.querySelector("#tape-value").focus()`)
	keys(page, kb.Enter)
	page.WaitTrue(`document.querySelectorAll(".tape-rows tbody tr").length === 1 && document.querySelector("#tape-value").value === ""`)
	page.WaitTrue(tapeQuestion + ` !== ` + quote(second))
	page.WaitTrue(`!document.querySelector("#tape-apply").disabled`)
	click(page, "#tape-apply")
	openPanel(page, "points")
	page.WaitTrue(`document.querySelector("#panel").textContent.includes("tape")`)
}

// TestTapeForm has the form to measure a car by written, with the server gone: it is the
// command's, to the byte, but for its first line, which has the study's name.
func TestTapeForm(t *testing.T) {
	page := Open(t, Options{})
	page.WaitOfflineReady()
	startClean(page)
	want, err := report.TapeForm(t.Context(), study.Template{Key: "double-wishbone-rack"}.Start(), engine.TapeFormOptions{})
	if err != nil {
		t.Fatal(err)
	}
	page.Offline()
	openPanel(page, "tape")
	Eval[chromedp.Void](page, catchFiles)
	click(page, "#tape-form")
	page.WaitTrue(`!!` + caught("text/plain"))
	_, got, _ := strings.Cut(Eval[string](page, caught("text/plain")+`.text()`), "\n")
	if _, want, _ = strings.Cut(want, "\n"); got != want {
		t.Errorf("the page's form is\n%s\nthe command's\n%s", got, want)
	}
}
