package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
)

const (
	sizesField = `document.querySelector("#sizes-tieRodOuterHeight")`
	stepField  = `document.querySelector("#grid-tieRodOuterHeight")`
)

// TestSizesOfAVariable states the sizes that a shop has in place of a step, mistypes them,
// searches with them, and takes them away.
func TestSizesOfAVariable(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "search")
	click(page, "#more-tieRodOuterHeight")
	typeInto(page, "#sizes-tieRodOuterHeight", "-12.7 3 x4")
	page.WaitTrue(`document.querySelector("#sizes-tieRodOuterHeight-problem")?.textContent.includes("x4")`)
	page.WaitTrue(sizesField + `.value === "-12.7 3 x4" && ` + sizesField + `.getAttribute("aria-invalid") === "true"`)
	page.Shot("sizes mistyped")
	typeInto(page, "#sizes-tieRodOuterHeight", "-12.7 3, 1/2 in")
	page.WaitTrue(sizesField + `.value === "−12.7, 3, 12.7" && ` + stepField + `.disabled`)
	page.Shot("sizes")
	click(page, "#find")
	page.WaitTrue(`document.querySelector("#answer")?.textContent.includes("On the steps and sizes stated")`)
	page.Shot("sizes found")
	typeInto(page, "#sizes-tieRodOuterHeight", "")
	page.WaitTrue(`!` + stepField + `.disabled && ` + sizesField + `.value === ""`)
}

// TestAdjusterLimit asks for room in the adjuster, reads how the car stands to it, and
// takes the limit away.
func TestAdjusterLimit(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "search")
	choose(page, "#add-limit", "adjusterRange")
	typeInto(page, "#limit-2-min", "3")
	page.WaitTrue(`document.querySelector("#limit-2-min")?.value === "3.00"`)
	Eval[chromedp.Void](page, `void document.querySelector("#limit-2-min").scrollIntoView({block: "center"})`)
	page.Shot("adjuster")
	told := `[...document.querySelectorAll("#selected-car .limits li")].some((e) => e.textContent.includes("Adjuster, room to turn either way") && e.textContent.includes("at least 3.00 wanted"))`
	openPanel(page, "compare")
	page.WaitTrue(told)
	openPanel(page, "search")
	click(page, `button[aria-label="Remove the limit on Adjuster, room to turn either way"]`)
	page.WaitTrue(`!document.querySelector("#limit-2-min")`)
	openPanel(page, "compare")
	page.WaitTrue(`!!document.querySelector("#selected-car .limits li") && !` + told)
}
