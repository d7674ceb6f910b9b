package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// tabTo presses Tab until an element has the keyboard.
func tabTo(p *Page, id string) {
	p.t.Helper()
	for range 120 {
		if Eval[string](p, `document.activeElement.id`) == id {
			return
		}
		keys(p, kb.Tab)
	}
	p.t.Fatalf("#%s cannot be reached by Tab", id)
}

// TestWalkByKeys goes from a new run to the fit, the search and the sheet by keys alone. What is
// found is announced, and the keyboard stays where it was. [TestGaugeThatTypes] types the rows.
func TestWalkByKeys(t *testing.T) {
	page := openSheet(t, Options{})
	step := func(key, id string) {
		t.Helper()
		Eval[chromedp.Void](page, `void document.activeElement.blur()`)
		keys(page, key)
		page.WaitTrue(`document.querySelector("#` + id + `").getAttribute("aria-selected") === "true"`)
	}
	stays := func(id, announced string) {
		t.Helper()
		waitFrame(page)
		if got := Eval[string](page, `document.activeElement.id`); got != id {
			t.Errorf("the keyboard is at %q when the answer has come, want #%s", got, id)
		}
		page.WaitTrue(`document.querySelector("#message[role=status]").textContent.includes(` + quote(announced) + `)`)
	}

	step("2", "step-readings")
	tabTo(page, "new-run")
	keys(page, kb.Enter)
	page.WaitTrue(`document.activeElement.id === "pad-Stack"`)
	keys(page, kb.Enter)
	page.WaitTrue(`!!document.querySelector("#pad-Right")`)
	for _, id := range []string{"pad-Travel", "pad-Left", "pad-Right"} {
		if got := Evalf[string](page, `document.querySelector("#%s").labels[0]?.textContent`, id); "pad-"+got != id {
			t.Errorf("#%s is called %q", id, got)
		}
	}

	step("2", "step-readings")
	tabTo(page, "fit")
	keys(page, kb.Enter)
	page.WaitTrue(`!!document.querySelector("#fitted")`)
	stays("fit", "Fitted: ")

	step("3", "step-find")
	tabTo(page, "find")
	keys(page, kb.Enter)
	page.WaitTrue(`!!document.querySelector("#answer")`)
	stays("find", "found")

	step("5", "step-make")
	page.WaitTrue(`!!document.querySelector("#part-drawing")`)
}
