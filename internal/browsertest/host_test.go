package browsertest

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"

	"toewright/internal/web"
)

// TestUpdateIsOffered edits the demo, has a newer version come, and changes to it by the
// button that the page offers: the edit is there.
func TestUpdateIsOffered(t *testing.T) {
	page := Open(t, Options{Web: web.Config{Assets: Version(t, "old")}})
	page.WaitOfflineReady()
	change(page, Version(t, "new"))
	Eval[string](page, AskForUpdate)
	openPanel(page, "compare")
	typeInto(page, "#selected-car .slider input", "-11.5")
	click(page, "#update-now")
	page.WaitTrue(ShownVersion + ` === "new"`)
	page.WaitRunning()
	page.WaitTrue(sliderValue + ` === "−11.50"`)
	page.WaitTrue(`!document.querySelector("#newer")`)
}

// TestInstallIsOffered has the browser offer to install the page, as Chromium does for a
// page that it finds worth it, and takes the offer up.
func TestInstallIsOffered(t *testing.T) {
	page := openSheet(t, Options{})
	openPanel(page, "study")
	page.WaitTrue(`!!document.querySelector("#make-link") && !document.querySelector("#install")`)
	Eval[chromedp.Void](page, `void (() => {
		const offer = new Event("beforeinstallprompt");
		offer.prompt = async () => { window.prompted = true; };
		offer.userChoice = Promise.resolve({ outcome: "accepted" });
		dispatchEvent(offer);
	})()`)
	click(page, "#install")
	page.WaitTrue(`window.prompted === true && !document.querySelector("#install")`)
}

// TestEveryStepHasAKey opens the steps by their digits, which a field of text keeps for
// itself.
func TestEveryStepHasAKey(t *testing.T) {
	page := openSheet(t, Options{})
	const press = `void %s.dispatchEvent(new KeyboardEvent("keydown", {key: %s, bubbles: true, cancelable: true}))`
	steps := Eval[[]string](page, `[...document.querySelectorAll(".step")].map((e) => e.id)`)
	if len(steps) != 5 {
		t.Fatalf("the steps are %q, want five", steps)
	}
	open := func(id string) string {
		return `document.querySelector("#` + id + `").getAttribute("aria-selected") === "true"`
	}
	for i, id := range steps {
		Evalf[chromedp.Void](page, press, "document.body", quote(fmt.Sprint(i+1)))
		page.WaitTrue(open(id))
	}
	openPanel(page, "car")
	Evalf[chromedp.Void](page, press, `document.querySelector("#panel input[type=text]")`, quote("3"))
	waitFrame(page)
	if !Eval[bool](page, open("step-car")) {
		t.Error("a digit that is typed into a field opens a step")
	}
}
