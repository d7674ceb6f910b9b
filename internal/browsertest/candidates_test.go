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

// cardNames lists the cars in the order of their cards.
func cardNames(p *Page) []string {
	return Eval[[]string](p, `[...document.querySelectorAll(".card-name")].map((e) => e.textContent)`)
}

// TestCandidatesByKeyboard selects, moves, copies, names, hides, deletes and takes back
// with the keyboard alone. It stays where the work goes on.
func TestCandidatesByKeyboard(t *testing.T) {
	page := openSheet(t, Options{})
	strike(page, "#car-1 .card-name", kb.Enter)
	page.WaitTrue(`!!document.querySelector("#car-1.selected")`)
	strike(page, "#down-1", kb.Enter)
	waitFocus(page, "down-2")
	page.Do(chromedp.KeyEvent(kb.Enter))
	waitFocus(page, "down-3")
	page.Do(chromedp.KeyEvent(kb.Enter))
	waitFocus(page, "up-4") // it is the last
	if got := cardNames(page); got[4] != "Spacers 6 mm" {
		t.Errorf("cards after three steps down = %q, want Spacers 6 mm at the end", got)
	}

	strike(page, ".card.selected .deeds button:nth-child(1)", kb.Enter)
	waitFocus(page, "name-5")
	page.Do(chromedp.KeyEvent("a", chromedp.KeyModifiers(chromedp.ModifierCtrl)), chromedp.KeyEvent("Taller stud"), chromedp.KeyEvent(kb.Enter))
	page.WaitTrue(`document.querySelector(".card.selected .card-name").textContent === "Taller stud"`)

	strike(page, ".card.selected .deeds button:nth-child(2)", kb.Enter)
	page.WaitTrue(`document.querySelector(".card.selected .tag")?.textContent === "hidden"`)

	strike(page, ".card.selected .deeds .danger", kb.Enter)
	waitFocus(page, "toast-undo")
	if got := cardNames(page); len(got) != 5 {
		t.Errorf("cards after the deletion = %q, want 5", got)
	}
	page.Do(chromedp.KeyEvent(kb.Enter))
	page.WaitTrue(`document.querySelectorAll(".card").length === 6`)
}

// TestCandidatesAreSortedAndCompared sorts by a figure and takes differences from another
// car.
func TestCandidatesAreSortedAndCompared(t *testing.T) {
	page := openSheet(t, Options{Width: 390, Height: 844, Touch: true})
	typeInto(page, "#sort", "0")
	page.WaitTrue(`document.querySelector(".card-name").textContent === "Spacers 12 mm"`)
	typeInto(page, "#yardstick", "2")
	page.WaitTrue(`document.querySelector("#car-2 .tag")?.textContent === "yardstick"`)
	if text := Eval[string](page, `document.querySelector("#car-0 .difference").textContent`); text[0] != '+' {
		t.Errorf("the base car's difference from the better one = %q, want more", text)
	}
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
