package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// openMap opens the map and waits until it is drawn in full.
func openMap(t *testing.T, o Options) *Page {
	t.Helper()
	page := openSheet(t, o)
	openPanel(page, "map")
	page.WaitTrue(mapIsFull)
	return page
}

// What a map is drawn with: the contour lines, the shades of a full map, and the place of
// the selected car.
const (
	mapIsFull    = `document.querySelector("#map-shades")?.width === 127`
	contourLines = `[...document.querySelectorAll("#map-ground .contour")].map(e => e.getAttribute("d")).join()`
	carOnMap     = `document.querySelector("#map-cars .crosshair").getAttribute("d")`
)

// armHandle is the outer ball in plan, which a drag moves along the steering arm.
const armHandle = `.ball-handle[aria-valuetext^="steering arm length"]`

// TestMapIsLiveUnderADrag drags the outer ball in plan: the map over the heights becomes
// that of the other arm while the pointer is still down.
func TestMapIsLiveUnderADrag(t *testing.T) {
	page := openMap(t, Options{})
	page.Shot("map before")
	before := Eval[string](page, contourLines)
	ball := middle(page, armHandle)
	press(page, ball)
	moveTo(page, ball.by(0, 12))
	page.WaitTrue(contourLines + ` !== ` + quote(before))
	page.Shot("map dragging")
	lift(page, ball.by(0, 12))
	page.WaitTrue(mapIsFull)
	page.Shot("map after")
}

// moveTo moves the mouse with its left button down.
func moveTo(p *Page, to place) {
	p.t.Helper()
	p.Do(chromedp.MouseEvent(chromedp.MouseMoved, to.X, to.Y, chromedp.Button("left")))
	waitFrame(p)
}

// TestMapLeadsTheCar drags the selected car over the map, takes the arrow keys from there
// and goes to the least.
func TestMapLeadsTheCar(t *testing.T) {
	page := openMap(t, Options{Width: 390, Height: 844})
	Eval[chromedp.Void](page, `void document.querySelector("#map").scrollIntoView({block: "center"})`)
	moved := func(after string) string {
		page.WaitTrue(carOnMap + ` !== ` + quote(after))
		return Eval[string](page, carOnMap)
	}
	at := Eval[string](page, carOnMap)
	drag(page, middle(page, "#map"), 20, -20)
	at = moved(at)
	page.WaitTrue(`document.querySelector("#message").textContent.includes("RMS")`)
	page.Do(chromedp.Focus(chromedp.CSS("#map")), chromedp.KeyEvent(kb.ArrowLeft))
	at = moved(at)
	page.Shot("map phone")
	click(page, "#map-best")
	moved(at)
	pressControl(page, "z")
	page.WaitTrue(carOnMap + ` === ` + quote(at))
}

// TestTradeOffBringsACandidate weighs toe change against the distance from stock and takes
// the first design of the front.
func TestTradeOffBringsACandidate(t *testing.T) {
	page := openSheet(t, Options{})
	openPanel(page, "tradeoff")
	click(page, "#trade")
	page.WaitTrue(`document.querySelectorAll("#designs tbody tr").length > 2`)
	Eval[chromedp.Void](page, `void document.querySelector("#designs").scrollIntoView()`)
	page.Shot("trade-off")
	at := middle(page, "#designs tbody button")
	page.Do(chromedp.MouseClickXY(at.X, at.Y))
	openPanel(page, "compare")
	page.WaitTrue(`document.querySelector(".compare-head.selected .compare-name")?.textContent.startsWith("distance from stock")`)
}
