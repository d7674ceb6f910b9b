package browsertest

import "testing"

// TestBlankToDrawing goes from a new study to the drawing of an arm on a phone, with the server
// gone: a reload finds the car that was found, and the same sizes.
func TestBlankToDrawing(t *testing.T) {
	page := Open(t, Options{Width: 390, Height: 844, Touch: true})
	openPanel(page, "study")
	click(page, "#new-study")
	click(page, "#template-double-wishbone-rack")
	page.WaitOfflineReady()
	page.Stop()
	openPanel(page, "search")
	click(page, "#find")
	page.WaitTrue(`!!document.querySelector("#answer")`)
	const found = `document.querySelector(".strip [aria-pressed=true]")?.textContent.includes("found")`
	const sizes = `document.querySelector("#sizes").innerText`
	drawn := func() string {
		t.Helper()
		openPanel(page, "sheet")
		page.WaitTrue(`document.querySelector("#part-drawing")?.naturalWidth > 0 && document.querySelectorAll("#sizes tbody tr").length >= 6`)
		return Eval[string](page, sizes)
	}
	page.WaitTrue(found)
	before := drawn()
	page.WaitTrue(`document.querySelector("#kept").textContent === "saved"`)
	page.Reload()
	page.WaitTrue(found)
	if after := drawn(); after != before {
		t.Errorf("the sizes were %q and are %q", before, after)
	}
	page.Shot("blank to drawing")
	page.Start()
}
