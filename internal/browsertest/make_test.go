package browsertest

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestPartDrawing shows the drawing of both arms, saves it as each kind of file with the
// server gone, and lists what the part fits and what is made.
func TestPartDrawing(t *testing.T) {
	for _, o := range []Options{{}, {Width: 1024, Height: 768}, {Width: 390, Height: 844, Touch: true, Dark: true}} {
		page := openSheet(t, o)
		page.WaitOfflineReady()
		page.Stop()
		openPanel(page, "sheet")
		page.WaitTrue(`document.querySelector("#part-drawing")?.naturalWidth > 0`)
		page.WaitTrue(`!!document.querySelector("#covers") && !!document.querySelector("#sizes")`)
		page.Shot(fmt.Sprintf("make %d", o.Width))
		left := Eval[string](page, `document.querySelector("#part-drawing").src`)
		click(page, "#arm-right")
		page.WaitTrue(`document.querySelector("#part-drawing")?.src !== ` + quote(left) + ` && document.querySelector("#part-drawing")?.alt.includes("right")`)
		for _, kind := range []string{"dxf", "step", "svg"} {
			Eval[chromedp.Void](page, catchFiles)
			click(page, "#save-"+kind)
			page.WaitTrue(`!!` + caught("application/octet-stream"))
		}
		page.Start()
	}
}
