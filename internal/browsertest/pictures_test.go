package browsertest

import (
	"os"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestPictures makes the pictures of the page that the documents show, where
// TOEWRIGHT_SHOTS names a folder for them; see make pictures.
func TestPictures(t *testing.T) {
	if os.Getenv("TOEWRIGHT_SHOTS") == "" {
		t.Skip("no folder for pictures; run make pictures")
	}
	for _, tt := range []struct {
		name string
		o    Options
		show func(*Page)
	}{
		{"sheet", Options{}, func(p *Page) { drag(p, middle(p, leftMarker), 0, -70) }},
		{"find", Options{}, func(p *Page) { work(p, "search", "#find", "#answer") }},
		{"compare", Options{}, func(p *Page) {
			openPanel(p, "compare")
			p.WaitTrue(`![...document.querySelectorAll(".compare-table td")].some((e) => e.textContent.includes("…"))`)
		}},
		{"forge", Options{}, func(p *Page) { work(p, "series", "#forge", "#series") }},
		{"bench-sheet", Options{}, func(p *Page) {
			openPanel(p, "sheet")
			p.WaitTrue(`!!document.querySelector("#part-drawing")`)
		}},
		{"phone", Options{Width: 390, Height: 844, Touch: true}, func(p *Page) { openPanel(p, "search") }},
		{"phone-arm", Options{Width: 390, Height: 844, Touch: true, Dark: true}, func(p *Page) { typeInto(p, "#face", "3") }},
		{"phone-readings", Options{Width: 390, Height: 844, Touch: true}, func(p *Page) {
			work(p, "readings", "#fit", "#fitted")
			Eval[chromedp.Void](p, `void document.querySelector(".pad").scrollIntoView({block: "end"})`)
		}},
	} {
		page := openSheet(t, tt.o)
		page.WaitText("#solver", "ready")
		tt.show(page)
		waitFrame(page)
		page.Shot(tt.name)
	}
}

// work opens a panel, presses a button there and waits for what comes of it.
func work(p *Page, panel, button, outcome string) {
	p.t.Helper()
	openPanel(p, panel)
	click(p, button)
	p.WaitTrue(`!!document.querySelector(` + quote(outcome) + `)`)
	reveal(p, outcome)
}

// reveal scrolls an element into view.
func reveal(p *Page, selector string) {
	p.t.Helper()
	Eval[chromedp.Void](p, `void document.querySelector(`+quote(selector)+`).scrollIntoView({block: "nearest"})`)
}
