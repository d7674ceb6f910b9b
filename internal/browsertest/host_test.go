package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"

	"toewright/internal/web"
)

// TestUpdateIsOffered edits the demo, has a newer version come, and changes to it by the
// button that the page offers: the edit is there.
func TestUpdateIsOffered(t *testing.T) {
	page := Open(t, Options{Web: web.Config{Assets: version(t, "old")}})
	page.WaitOfflineReady()
	change(page, version(t, "new"))
	Eval[string](page, askForUpdate)
	typeInto(page, ".card.selected .slider input", "-11.5")
	click(page, "#update-now")
	page.WaitTrue(shownVersion + ` === "new"`)
	page.WaitRunning()
	page.WaitTrue(sliderValue + ` === "−11.50"`)
	page.WaitTrue(`!document.querySelector("#newer")`)
}

// TestInstallIsOffered has the browser offer to install the page, as Chromium does for a
// page that it finds worth it, and takes the offer up.
func TestInstallIsOffered(t *testing.T) {
	page := openSheet(t, Options{})
	click(page, "#tab-studies")
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

// TestEveryTabHasAKey checks that the digits of the list of keys reach all panels.
func TestEveryTabHasAKey(t *testing.T) {
	page := openSheet(t, Options{})
	if n := Eval[int](page, `document.querySelectorAll("[role=tab]").length`); n != 9 {
		t.Errorf("%d tabs, want the nine that the list of keys names", n)
	}
}
