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

// TestPadTellsWhereItIs presses keys of a tablet's pad by a keyboard, as one does who hears the page:
// the keyboard is in the field that is typed, which says its name and its digits, Next says where
// it goes, and behind Right one key is Next.
func TestPadTellsWhereItIs(t *testing.T) {
	page := Open(t, Options{Width: 1024, Height: 768, Touch: true})
	startClean(page)
	tabTo(page, "new-run")
	keys(page, kb.Enter)
	page.WaitTrue(`document.activeElement.id === "pad-Stack"`)
	press := func(key string) {
		t.Helper()
		if !Evalf[bool](page, `(() => { const key = document.querySelector(%s); key.focus(); return document.activeElement === key; })()`, quote(key)) {
			t.Fatalf("%s takes no keyboard", key)
		}
		keys(page, " ")
	}
	at := func(name, digits, goes string) {
		t.Helper()
		page.WaitTrue(`(() => {
			const field = document.activeElement;
			return field.labels?.[0]?.textContent === ` + quote(name) + ` && field.value === ` + quote(digits) + `
				&& document.querySelector("#pad-next").textContent === ` + quote("Next"+goes) + `;
		})()`)
	}
	press("#pad-next")
	page.WaitTrue(`document.activeElement.id === "pad-Travel"`)
	for _, step := range []struct{ key, name, digits, goes string }{
		{`[data-key="5"]`, "Travel", "5", "left"},
		{"#pad-next", "Left", "", "right"},
		{`[data-key="1"]`, "Left", "1", "right"},
		{`[data-key="±"]`, "Left", "−1", "right"},
		{"#pad-next", "Right", "", "+10"},
		{`[data-key="2"]`, "Right", "2", "+10"},
		{kb.Enter, "Travel", "10", "left"}, // from Right to the next row
		{"#pad-next", "Left", "", "right"},
		{`[data-key="3"]`, "Left", "3", "right"},
		{"#pad-next", "Right", "", "+15"},
		{`[data-key="4"]`, "Right", "4", "+15"},
	} {
		if step.key == kb.Enter {
			keys(page, kb.Enter)
		} else {
			press(step.key)
		}
		at(step.name, step.digits, step.goes)
	}
	keys(page, kb.Tab) // too
	page.WaitTrue(padShows + ` === "15|| at Left, +5 −1.00 2.00; +10 3.00 4.00"`)
	page.WaitTrue(`document.activeElement.id === "pad-Left"`)
}

// TestEveryCellSaysItsSide looks at the cells of cars of both sides and of one: each is called by
// its place, its side where it has one, and its axis.
func TestEveryCellSaysItsSide(t *testing.T) {
	page := Open(t, Options{})
	for _, template := range []string{"double-wishbone-rack", "solid-axle-rack"} {
		openPanel(page, "study")
		click(page, "#new-study")
		click(page, "#template-"+template)
		openPanel(page, "points")
		for _, side := range []string{"left", "right"} {
			click(page, "#side-"+side)
			page.WaitTrue(`document.querySelector("#side-` + side + `").getAttribute("aria-pressed") === "true" && !!document.querySelector(".cells input[id$=` + side + `-x]")`)
			for _, name := range Eval[[]string](page, `[...document.querySelectorAll(".cells input")].filter((cell) => {
				const [, of, axis] = /(left|right)?-([xyz])$/.exec(cell.id), name = cell.getAttribute("aria-label");
				return !name.endsWith((of ? ", " + of : "") + ", " + axis) || of && of !== "`+side+`" || name.length < 10;
			}).map((cell) => cell.id + ": " + cell.getAttribute("aria-label"))`) {
				t.Errorf("%s, %s: %q does not say its place, side and axis", template, side, name)
			}
		}
	}
}
