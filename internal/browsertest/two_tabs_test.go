package browsertest

import "testing"

// sliderValue is the first number of the selected car.
const sliderValue = `document.querySelector("#selected-car .slider input")?.value`

// twoTabs opens one study in two tabs, changes it in the second and returns the first.
func twoTabs(t *testing.T) *Page {
	t.Helper()
	first := Open(t, Options{})
	openPanel(first, "compare")
	typeInto(first, "#selected-car .slider input", "-11")
	first.WaitTrue(`document.querySelector("#kept").textContent === "saved"`)
	second := first.SecondTab(Options{})
	second.WaitTrue(sliderValue + ` === "−11.00"`)
	typeInto(second, "#selected-car .slider input", "-7")
	second.WaitTrue(`document.querySelector("#kept").textContent === "saved"`)
	first.WaitTrue(`document.querySelector("#theirs")?.textContent.includes("revision 3")`)
	first.Shot("two tabs")
	return first
}

// keptStudies returns how many studies the browser keeps.
func keptStudies(p *Page) int {
	openPanel(p, "study")
	p.WaitTrue(`!!document.querySelector("#studies")`)
	return Eval[int](p, `document.querySelectorAll("#studies > li").length`)
}

// TestGoOnWithTheirs takes what the other tab saved.
func TestGoOnWithTheirs(t *testing.T) {
	first := twoTabs(t)
	click(first, "#take-theirs")
	first.WaitTrue(sliderValue + ` === "−7.00"`)
	first.WaitTrue(`!document.querySelector("#theirs")`)
	if n := keptStudies(first); n != 1 {
		t.Errorf("%d studies are kept, want 1: nothing was unsaved here", n)
	}
}

// TestKeepThisOneApart goes on with what is open; both are kept.
func TestKeepThisOneApart(t *testing.T) {
	first := twoTabs(t)
	click(first, "#keep-apart")
	first.WaitTrue(`!document.querySelector("#theirs") && document.querySelector("#study-menu strong").textContent.endsWith("(kept apart)")`)
	if n := keptStudies(first); n != 2 {
		t.Errorf("%d studies are kept, want both", n)
	}
	openPanel(first, "compare")
	first.WaitTrue(sliderValue + ` === "−11.00"`)
}

// TestEditWhileTheirsIsOffered edits on without a choice: that is kept as well, and theirs
// can still be opened.
func TestEditWhileTheirsIsOffered(t *testing.T) {
	first := twoTabs(t)
	typeInto(first, "#selected-car .slider input", "-3")
	first.WaitTrue(`!document.querySelector("#theirs") && document.querySelector("#kept").textContent === "saved"`)
	if n := keptStudies(first); n != 2 {
		t.Errorf("%d studies are kept, want both", n)
	}
}

// TestThePlaceIsRemembered reloads the page and finds the panel and the car that were
// open.
func TestThePlaceIsRemembered(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "compare")
	typeInto(page, "#selected-car .slider input", "-11.5")
	click(page, "#car-1 .compare-name")
	page.WaitTrue(`!!document.querySelector("#car-1.selected")`)
	typeInto(page, "#yardstick", "3")
	openPanel(page, "search")
	page.WaitTrue(`document.querySelector("#kept").textContent === "saved"`)
	page.Reload()
	page.WaitTrue(`document.querySelector("#step-find")?.getAttribute("aria-selected") === "true"`)
	page.WaitTrue(`document.querySelector("#picture.foremost1") !== null`)
	openPanel(page, "compare")
	page.WaitTrue(`document.querySelector("#yardstick")?.value === "3"`)
}
