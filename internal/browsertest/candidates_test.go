package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// strike gives the keyboard to an element and presses a key there.
func strike(p *Page, selector, key string) {
	p.t.Helper()
	p.WaitTrue(`!!document.querySelector(` + quote(selector) + `)`)
	p.Do(chromedp.Focus(chromedp.CSS(selector)), chromedp.KeyEvent(key))
}

// waitFocus waits until an element has the keyboard.
func waitFocus(p *Page, id string) {
	p.t.Helper()
	p.WaitTrue(`document.activeElement?.id === ` + quote(id))
}

// carNames lists the cars in the order of their columns.
func carNames(p *Page) []string {
	return Eval[[]string](p, `[...document.querySelectorAll(".compare-name")].map((e) => e.textContent)`)
}

// TestCandidatesByKeyboard selects, moves, copies, names, hides, deletes and takes back
// with the keyboard alone. It stays where the work goes on.
func TestCandidatesByKeyboard(t *testing.T) {
	page := openSheet(t, Options{})
	openPanel(page, "compare")
	strike(page, "#car-1 .compare-name", kb.Enter)
	page.WaitTrue(`!!document.querySelector("#car-1.selected")`)
	strike(page, "#move-right", kb.Enter)
	page.WaitTrue(`!!document.querySelector("#car-2.selected")`)
	waitFocus(page, "move-right")
	page.Do(chromedp.KeyEvent(kb.Enter))
	page.WaitTrue(`!!document.querySelector("#car-3.selected")`)
	page.Do(chromedp.KeyEvent(kb.Enter))
	waitFocus(page, "move-left") // it is the last
	if got := carNames(page); got[4] != "Spacers 6 mm" {
		t.Errorf("cars after three steps to the right = %q, want Spacers 6 mm at the end", got)
	}

	strike(page, "#duplicate", kb.Enter)
	waitFocus(page, "name-5")
	page.Do(chromedp.KeyEvent("a", chromedp.KeyModifiers(chromedp.ModifierCtrl)), chromedp.KeyEvent("Taller stud"), chromedp.KeyEvent(kb.Enter))
	page.WaitTrue(`document.querySelector(".compare-head.selected .compare-name").textContent === "Taller stud"`)

	strike(page, "#hide", kb.Enter)
	page.WaitTrue(`[...document.querySelectorAll(".compare-head.selected .tag")].some((e) => e.textContent === "hidden")`)

	strike(page, "#delete", kb.Enter)
	waitFocus(page, "message-undo")
	if got := carNames(page); len(got) != 5 {
		t.Errorf("cars after the deletion = %q, want 5", got)
	}
	page.Do(chromedp.KeyEvent(kb.Enter))
	page.WaitTrue(`document.querySelectorAll(".compare-head").length === 6`)
}

// TestCarsAreSortedAndCompared sorts by a row and takes differences from another car, which
// then stands first.
func TestCarsAreSortedAndCompared(t *testing.T) {
	page := openSheet(t, Options{Width: 390, Height: 844, Touch: true})
	openPanel(page, "compare")
	typeInto(page, "#sort", "rms")
	page.WaitTrue(`document.querySelectorAll(".compare-name")[1].textContent === "Spacers 12 mm"`)
	typeInto(page, "#yardstick", "2")
	page.WaitTrue(`document.querySelector("#car-2 .tag")?.textContent === "ref" && document.querySelectorAll(".compare-name")[0].textContent === "Spacers 12 mm"`)
	click(page, "#show-differences")
	const worse = `document.querySelector('#cars tbody td[data-car="0"]').textContent`
	page.WaitTrue(worse + `[0] === "+"`)
}

// openCompare opens the step and waits until the workers have answered.
func openCompare(t *testing.T, o Options) *Page {
	t.Helper()
	page := openSheet(t, o)
	openPanel(page, "compare")
	page.WaitTrue(`!!document.querySelector("#cars tbody td") && !document.querySelector("#cars .waits")`)
	return page
}

// TestSeriesIsBuiltMeanwhile waits for the share of each car's series, which nobody asked
// for, and edits the selected car: its share is built again, those of the others stay.
func TestSeriesIsBuiltMeanwhile(t *testing.T) {
	page := openCompare(t, Options{})
	const shares = `[...[...document.querySelectorAll("#cars tbody tr")].find((r) => r.textContent.startsWith("Cars within")).querySelectorAll("td")]`
	before := Eval[[]string](page, shares+`.map((e) => e.textContent)`)
	typeInto(page, "#selected-car .slider input", "-11.5")
	page.WaitTrue(shares + `.filter((e) => e.textContent === "…").length === 1`)
	page.WaitTrue(`!document.querySelector("#cars .waits")`)
	after := Eval[[]string](page, shares+`.map((e) => e.textContent)`)
	if before[1] != after[1] || before[2] == after[2] {
		t.Errorf("shares before %q, after the edit of the third %q", before, after)
	}
}

// TestTableIsTakenAlong saves the table for a spreadsheet.
func TestTableIsTakenAlong(t *testing.T) {
	page := openCompare(t, Options{})
	Eval[chromedp.Void](page, catchFiles)
	click(page, "#save-csv")
	page.WaitTrue(`!!` + caught("text/csv"))
}

// TestKeysAreListed opens the list of keys by its own, and leaves it.
func TestKeysAreListed(t *testing.T) {
	page := openSheet(t, Options{})
	page.Do(chromedp.Focus(chromedp.CSS("#commands")), chromedp.KeyEvent("?"))
	waitFocus(page, "keymap-close")
	page.Shot("keys")
	page.Do(chromedp.KeyEvent(kb.Escape))
	page.WaitTrue(`!document.querySelector("#keymap")`)
	waitFocus(page, "commands")
}
