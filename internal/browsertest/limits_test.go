package browsertest

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// choose chooses an option of a menu by its value.
func choose(p *Page, selector, value string) {
	p.t.Helper()
	p.WaitTrue(`!!document.querySelector(` + quote(selector) + `)`)
	Eval[chromedp.Void](p, `(() => {
		const menu = document.querySelector(`+quote(selector)+`);
		menu.value = `+quote(value)+`;
		menu.dispatchEvent(new Event("change", {bubbles: true}));
	})()`)
}

// openPart opens a part of the question in Find, where it is not open.
func openPart(p *Page, key string) {
	p.t.Helper()
	turner := `document.querySelector("#ask-` + key + `-open")`
	p.WaitTrue(`!!` + turner)
	Eval[chromedp.Void](p, `void (`+turner+`.getAttribute("aria-expanded") === "true" || `+turner+`.click())`)
}

// TestClearanceIsAdded keeps the tie rod clear of the lower wishbone by more than there is:
// the candidate's card says by how much it is broken.
func TestClearanceIsAdded(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "search")
	choose(page, "#add-limit", "link")
	choose(page, "#limit-2-of", "tie-rod")
	typeInto(page, "#limit-2-min", "200")
	page.WaitTrue(`document.querySelector("#limit-2-min")?.value === "200.00"`)
	Eval[chromedp.Void](page, `void document.querySelector("#limit-2-of").scrollIntoView({block: "center"})`)
	page.Shot("limits")
	openPanel(page, "compare")
	page.WaitTrue(`!!document.querySelector("#selected-car .limits .warning")`)
	text := Eval[string](page, `document.querySelector("#selected-car .limits .warning").textContent`)
	if !strings.Contains(text, "Clearance of the tie rod from a link") || !strings.Contains(text, "broken by") {
		t.Errorf("the card says %q, want the clearance and by how much it is broken", text)
	}
	page.Shot("limits candidate")
}

// TestSetUpsAreDrawn adds the usual set-ups: each is drawn on the chart, the one that
// decides in another stroke, and the panel says how well the selected car serves it.
func TestSetUpsAreDrawn(t *testing.T) {
	page := openSheet(t, Options{})
	openPanel(page, "search")
	click(page, "#usual-setups")
	page.WaitTrue(`!!document.querySelector(".chart.left .set-ups.binding[d]")`)
	page.WaitTrue(`document.querySelector(".setups .now small")?.textContent === "decides"`)
	page.Shot("set-ups")
}

// TestTargetOfAnotherCar looks for a car with the curve of a candidate.
func TestTargetOfAnotherCar(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "search")
	click(page, "#target-3")
	choose(page, "#target-car", "1")
	page.WaitTrue(`document.querySelector("#target-car").value === "1"`)
	click(page, "#find")
	page.WaitTrue(`!!document.querySelector("#answer")`)
	page.Shot("target of another car")
}

// TestLimitIsLookedAtAtLock asks for the inner ball at full lock too, by more than there is:
// the candidate's card says at which travel and lock it is broken. On a desk in the light,
// on a phone in the dark.
func TestLimitIsLookedAtAtLock(t *testing.T) {
	for name, o := range map[string]Options{"desk": {}, "phone": {Width: 390, Height: 844, Touch: true, Dark: true}} {
		t.Run(name, func(t *testing.T) {
			page := Open(t, o)
			openPanel(page, "search")
			openPart(page, "limits")
			choose(page, "#add-limit", "innerBallAngle")
			typeInto(page, "#limit-2-min", "")
			typeInto(page, "#limit-2-max", "5")
			choose(page, "#limit-2-at", "lock")
			page.WaitTrue(`document.querySelector("#ask-limits").textContent.includes("also at lock")`)
			Eval[chromedp.Void](page, `void document.querySelector("#limit-2-at").scrollIntoView({block: "center"})`)
			page.Shot("limits at lock " + name)
			openPanel(page, "compare")
			page.WaitTrue(`!!document.querySelector("#selected-car .limits .warning")`)
			text := Eval[string](page, `document.querySelector("#selected-car .limits .warning").textContent`)
			for _, want := range []string{"also at lock", " and full ", " lock (", "broken by"} {
				if !strings.Contains(text, want) {
					t.Errorf("the card says %q, want %q in it", text, want)
				}
			}
			Eval[chromedp.Void](page, `void document.querySelector("#selected-car .limits").scrollIntoView({block: "center"})`)
			page.Shot("limits at lock candidate " + name)
		})
	}
}
