package browsertest

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestPartDrawing shows the sheet of both arms, saves it and each arm as each kind of file
// with the server gone, draws anew to another step of the shop's, lists what the part fits and
// what is made, and prints the drawing on a page of its own before the bench sheet.
func TestPartDrawing(t *testing.T) {
	for _, o := range []Options{{}, {Width: 1024, Height: 768}, {Width: 390, Height: 844, Touch: true, Dark: true}} {
		page := openSheet(t, o)
		page.WaitOfflineReady()
		page.Stop()
		openPanel(page, "sheet")
		page.WaitTrue(`document.querySelector("#part-drawing")?.naturalWidth > 0`)
		page.WaitTrue(`!!document.querySelector("#covers") && document.querySelectorAll("#sizes tbody tr").length >= 6`)
		page.Shot(fmt.Sprintf("make %d", o.Width))
		click(page, "#arm-right")
		for _, kind := range []string{"dxf", "step", "svg"} {
			Eval[chromedp.Void](page, catchFiles)
			click(page, "#save-"+kind)
			page.WaitTrue(`!!` + caught("application/octet-stream"))
		}
		first := Eval[string](page, `document.querySelector("#part-drawing").src`)
		exact := Eval[string](page, `document.querySelector("#sizes").textContent`)
		choose(page, "#shop-step", "0.5")
		page.WaitTrue(`document.querySelector("#part-drawing")?.src !== ` + quote(first) + ` && document.querySelector("#part-drawing")?.naturalWidth > 0`)
		page.WaitTrue(`document.querySelector("#sizes").textContent !== ` + quote(exact))
		if n := pages(toPDF(page, 8.27, 11.69)); n != 2 && n != 3 {
			t.Errorf("the drawing and the sheet print on %d pages", n)
		}
		page.Start()
	}
}

// TestStatedByTheMaker states a thickness in the unit shown, a material and the projection:
// the drawing is drawn anew with each, what is no length stays in its field with the reason,
// and an undo takes one back.
func TestStatedByTheMaker(t *testing.T) {
	for _, o := range []Options{{}, {Width: 390, Height: 844, Touch: true, Dark: true}} {
		page := openSheet(t, o)
		openPanel(page, "sheet")
		drawn := func(do func()) {
			page.WaitTrue(`document.querySelector("#part-drawing")?.naturalWidth > 0`)
			before := Eval[string](page, `document.querySelector("#part-drawing").src`)
			do()
			page.WaitTrue(`document.querySelector("#part-drawing")?.src !== ` + quote(before) + ` && document.querySelector("#part-drawing")?.naturalWidth > 0`)
		}
		page.WaitTrue(`!!document.querySelector("#arm-stated")`)
		click(page, "#arm-stated")
		drawn(func() { typeInto(page, "#arm-material", "4140 bar") })
		drawn(func() { typeInto(page, "#arm-thickness", "22") })
		drawn(func() { choose(page, "#arm-projection", "first-angle") })
		typeInto(page, "#arm-bolt", "a lot")
		page.WaitTrue(`!!document.querySelector("#arm-bolt-problem") && document.querySelector("#arm-bolt").value === "a lot"`)
		page.Shot(fmt.Sprintf("make stated %d", o.Width))
		drawn(func() { click(page, "#undo") })
		page.WaitTrue(`document.querySelector("#arm-projection").value === "" && document.querySelector("#arm-material").value === "4140 bar"`)
		page.WaitTrue(`document.querySelector("#arm-thickness").value.startsWith("22")`)
	}
}
