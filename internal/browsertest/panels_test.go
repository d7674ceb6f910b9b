package browsertest

import (
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// click clicks the first element that a CSS selector finds, wherever it stands.
func click(p *Page, selector string) {
	p.t.Helper()
	p.WaitTrue(`!!document.querySelector(` + quote(selector) + `)`)
	Eval[chromedp.Void](p, `void document.querySelector(`+quote(selector)+`).click()`)
}

// openPanel opens a step or one of its ways by its key, or the study's menu as "study",
// and waits until it is open.
func openPanel(p *Page, key string) {
	p.t.Helper()
	if key == "study" {
		const open = `!!document.querySelector("#study-menu-box")`
		for range 3 { // a study that opens just then closes the menu
			if !Eval[bool](p, open) {
				click(p, "#study-menu")
				waitFrame(p)
			}
			time.Sleep(pollInterval)
		}
		p.WaitTrue(open)
		return
	}
	step, way := stepOf(key), ""
	if step != key {
		way = "#way-" + key
	}
	click(p, "#step-"+step)
	p.WaitTrue(`document.querySelector("#panel").getAttribute("aria-labelledby") === ` + quote("step-"+step))
	if way != "" {
		click(p, way)
		p.WaitTrue(`document.querySelector(` + quote(way) + `).getAttribute("aria-pressed") === "true"`)
	}
}

// stepOf returns the step that a way belongs to, or the key itself.
func stepOf(key string) string {
	switch key {
	case "points", "tape":
		return "car"
	case "search", "map", "tradeoff", "parts":
		return "find"
	case "sheet", "series":
		return "make"
	}
	return key
}

// TestFindBringsACandidate presses Find on the demo and waits for its candidate, whose
// curve is flatter than the base car's.
func TestFindBringsACandidate(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "search")
	click(page, "#find")
	page.WaitTrue(`!!document.querySelector("#answer")`)
	page.WaitTrue(`(() => {
		const key = document.querySelector(".strip [aria-pressed=true]").getBoundingClientRect();
		return key.right <= document.querySelector(".strip").getBoundingClientRect().right;
	})()`)
	page.Shot("found")
	openPanel(page, "compare")
	page.WaitTrue(`document.querySelector(".compare-head.selected .compare-name")?.textContent === "found"`)
	page.Shot("found candidate")
}

// TestForge builds the series of the demo.
func TestForge(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "series")
	click(page, "#forge")
	page.WaitTrue(`!!document.querySelector("#series")`)
	Eval[chromedp.Void](page, `void document.querySelector("#series").scrollIntoView()`)
	page.Shot("forge")

	choose(page, "#static-toe", "as-built")
	click(page, "#forge")
	page.WaitTrue(`document.querySelector("#series")?.textContent.includes("static toe as built")`)
}

func TestCarPanel(t *testing.T) {
	page := Open(t, Options{Width: 390, Height: 844, Touch: true})
	page.Shot("phone candidates")
	openPanel(page, "car")
	page.WaitTrue(`!!document.querySelector(".cells")`)
	Eval[chromedp.Void](page, `void document.querySelector(".cells").scrollIntoView()`)
	page.Shot("phone car")
	openPanel(page, "study")
	page.WaitTrue(`!!document.querySelector("#studies")`)
	page.Shot("phone studies")
}

func TestShelfAndSheet(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "parts")
	click(page, "#choose")
	page.WaitTrue(`!!document.querySelector("#choices")`)
	page.Shot("shelf")
	Eval[chromedp.Void](page, `void document.querySelector("#choices").scrollIntoView()`)
	page.Shot("shelf choices")
	openPanel(page, "sheet")
	page.WaitTrue(`!!document.querySelector("#why")`)
	page.Shot("bench sheet")
	Eval[chromedp.Void](page, `void document.querySelector(".sheet-curves").scrollIntoView()`)
	page.Shot("bench sheet curves")
}

// TestReadings types a reading with the big keys and fits the demo's car.
func TestReadings(t *testing.T) {
	page := Open(t, Options{Width: 390, Height: 844, Touch: true, Dark: true})
	openPanel(page, "readings")
	page.WaitTrue(`!!document.querySelector("#pad-next")`)
	Eval[chromedp.Void](page, `void document.querySelector(".pad").scrollIntoView({block: "end"})`)
	page.Shot("phone readings dark")
	click(page, "#fit")
	page.WaitTrue(`!!document.querySelector("#fitted")`)
	Eval[chromedp.Void](page, `void document.querySelector("#fitted").scrollIntoView()`)
	page.Shot("phone fitted dark")
	click(page, "#take-advice")
	page.WaitTrue(`document.querySelector("#message").textContent.includes("candidate")`)
}

// TestNoPanelScrollsSideways opens every panel on a phone: what is wider scrolls within
// itself.
func TestNoPanelScrollsSideways(t *testing.T) {
	page := Open(t, Options{Width: 390, Height: 844, Touch: true})
	for _, panel := range panels {
		tab := panel.key
		openPanel(page, tab)
		if tab == "sheet" {
			page.WaitTrue(`!!document.querySelector("#part-drawing")`)
		}
		page.Shot("phone " + tab)
		for _, wide := range Eval[[]string](page, Overflow) {
			t.Errorf("%s: %s px beyond the panel", tab, wide)
		}
	}
}

// TestTakeTheFittedCar fits the demo's car, takes it as the base car and puts the measured
// one back.
func TestTakeTheFittedCar(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "readings")
	click(page, "#fit")
	page.WaitTrue(`!!document.querySelector("#fitted")`)
	before := attribute(t, page, baseCurve, "d")
	click(page, "#take-fit")
	page.WaitTrue(`document.querySelector('` + baseCurve + `').getAttribute("d") !== ` + quote(before))
	pressControl(page, "z")
	page.WaitTrue(`document.querySelector('` + baseCurve + `').getAttribute("d") === ` + quote(before))
}
