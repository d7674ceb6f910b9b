package browsertest

import (
	"fmt"
	"math"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
)

// figureOf is the text of a car's figures: of the change as "strong", of the toe as "span".
const figureOf = `document.querySelector(".show-car:nth-child(%d) .show-figures %s").textContent`

// shown returns the text of a figure of the view.
func shown(p *Page, car int, what string) string {
	p.t.Helper()
	return Evalf[string](p, figureOf, car+1, what)
}

// engineSays returns the toe of the left wheel of a car of a study at ride height and at full
// bump, degrees.
func engineSays(t *testing.T, d *study.Document, car string) (rest, bump float64) {
	t.Helper()
	sweep, err := engine.Sweep(t.Context(), d, engine.SweepOptions{Candidate: car})
	if err != nil {
		t.Fatal(err)
	}
	at := sweep.Sweeps[0].Positions
	for i := range at {
		if at[i].Travel == 0 {
			rest = at[i].Toe
		}
	}
	return rest, at[len(at)-1].Toe
}

// TestBeforeAndAfter opens the view from Compare and from Make with the server gone: at full
// bump both cars have the engine's figures, over the viewer's own base too; keys, slider and
// finger move the wheels, and Escape gives the keyboard back.
func TestBeforeAndAfter(t *testing.T) {
	for _, o := range []Options{{Width: 1440, Height: 900}, {Width: 1024, Height: 768, Dark: true}, {Width: 390, Height: 844, Touch: true}, {Width: 320, Height: 568, Touch: true, Dark: true}} {
		t.Run(fmt.Sprint(o.Width), func(t *testing.T) { tryShow(t, o) })
	}
}

func tryShow(t *testing.T, o Options) {
	page := openSheet(t, o)
	d := study.Template{Key: "double-wishbone-rack"}.Document()
	page.openFile(d)
	page.WaitTrue(openName + " === " + quote(d.Name))
	page.WaitOfflineReady()
	page.Stop()
	choose(page, "#selected", "2")
	openPanel(page, "compare")
	button := "show-cars"
	if o.Width < 1000 {
		button += "-below"
	}
	page.Do(chromedp.Focus(chromedp.CSS("#"+button)), chromedp.KeyEvent(kb.Enter))
	page.WaitTrue(`document.querySelector("#show")?.open && document.querySelector(".show-figures strong")?.textContent !== ""`)
	waitFocus(page, "show-play")
	page.WaitText("#show-play", "Stop")
	page.WaitTrue(`document.querySelector("#show-travel").value > 5`)
	page.Do(chromedp.KeyEvent(" "))
	page.WaitText("#show-play", "Play")

	page.Do(chromedp.KeyEvent(kb.End))
	waitFocus(page, "show-travel")
	page.WaitTrue(`document.querySelector("#show-travel").getAttribute("aria-valuetext").startsWith("bump +60 mm")`)
	style := d.Style()
	after := Eval[string](page, `document.querySelector("#selected").selectedOptions[0].textContent`)
	compare := func() {
		t.Helper()
		for i, car := range []string{study.BaseName, after} {
			rest, bump := engineSays(t, d, car)
			if got, want := shown(page, i, "strong"), style.Toe(bump-rest); got != want {
				t.Errorf("%s: toe change %s, the engine says %s", car, got, want)
			}
			if got, want := shown(page, i, "span"), style.Toe(bump); got != want {
				t.Errorf("%s: toe %s, the engine says %s", car, got, want)
			}
		}
	}
	compare()
	looks := []Options{o}
	if o.Width == 390 {
		looks = append(looks, Options{Width: 360, Height: 640, Touch: true}, Options{Width: 844, Height: 390, Touch: true}, o)
	}
	for _, look := range looks {
		for range 2 {
			page.resize(look)
			checkFits(t, page)
			page.Shot(fmt.Sprintf("show %d dark %t", look.Width, look.Dark))
			look.Dark = !look.Dark
		}
	}

	// over the viewer's own base
	click(page, "#show-unit")
	click(page, "#show #toe-indicators")
	page.WaitTrue(`!!document.querySelector("#show #toe-base")`)
	typeInto(page, "#show #toe-base", "250")
	style.Gauge, style.Base = number.Indicators, 250
	page.WaitTrue(`document.querySelector("#show-unit").textContent.includes("250")`)
	page.WaitTrue(`document.querySelector(".show-figures strong")?.textContent === ` + quote(func() string {
		rest, bump := engineSays(t, d, study.BaseName)
		return style.Toe(bump - rest)
	}()))
	compare()
	click(page, "#show-unit")
	checkFits(t, page)
	checkCosts(t, page, d, after, style)

	// keys, and a finger or pointer
	strike(page, "#show-travel", kb.ArrowDown)
	page.WaitTrue(`document.querySelector("#show-travel").valueAsNumber === 59`)
	page.Do(chromedp.KeyEvent(kb.Home))
	page.WaitTrue(`document.querySelector("#show-travel").valueAsNumber === -60`)
	page.Do(chromedp.KeyEvent(" "))
	page.WaitText("#show-play", "Stop")
	Eval[chromedp.Void](page, `document.querySelector("#show .drawing").scrollIntoView({block: "center"})`)
	at := middle(page, "#show .drawing")
	if o.Touch {
		touchDrag(page, at, 0, -12)
	} else {
		page.Do(chromedp.MouseClickXY(at.X, at.Y))
	}
	page.WaitText("#show-play", "Play")
	if mm := Eval[float64](page, `document.querySelector("#show-travel").valueAsNumber`); math.Abs(mm) > 40 {
		t.Errorf("travel after the middle of the picture was touched = %g", mm)
	}
	loadAxe(page)
	check(page, "before and after")

	page.Do(chromedp.KeyEvent(kb.Escape))
	page.WaitTrue(`!document.querySelector("#show")`)
	waitFocus(page, button)
	openPanel(page, "sheet")
	click(page, "#show-cars")
	page.WaitTrue(`document.querySelector("#show")?.open === true`)
	click(page, "#show-close")
	page.WaitTrue(`!document.querySelector("#show")`)
	page.Start()
}

// checkFits measures the view: nothing is wider than the screen, small, or out of a finger's
// reach, and the figures are as large as there is room.
func checkFits(t *testing.T, page *Page) {
	t.Helper()
	if by := Eval[float64](page, `Math.max(...[...document.querySelectorAll(".show-box, .show-scroll")].map((e) => e.scrollWidth)) - innerWidth`); by > 0 {
		t.Errorf("%g px wider than the screen", by)
	}
	for _, what := range Eval[[]string](page, tiny) {
		t.Errorf("too small to be read: %s", what)
	}
	const most = `[...document.querySelectorAll("#show strong")].filter((e) => e.scrollWidth > e.parentElement.clientWidth + 1).map((e) => e.id)`
	for _, id := range Eval[[]string](page, most) {
		t.Errorf("%s is wider than its place", id)
	}
	size := Eval[float64](page, `parseFloat(getComputedStyle(document.querySelector(".show-figures strong")).fontSize)`)
	if least := min(110, Eval[float64](page, `Math.min(innerWidth * 0.2, innerHeight * 0.12)`)); size < least {
		t.Errorf("figures are %g px large, want %g", size, least)
	}
}

// checkCosts holds the estimates against those of the engine.
func checkCosts(t *testing.T, page *Page, d *study.Document, after string, style number.Style) {
	t.Helper()
	rows := Eval[[][]string](page, `[...document.querySelectorAll(".show-costs tbody tr")].map((r) => [...r.cells].map((c) => c.textContent))`)
	if len(rows) != 4 {
		t.Fatalf("estimates %q, want 4", rows)
	}
	for i, car := range []string{study.BaseName, after} {
		axle, err := engine.Axle(t.Context(), d, engine.AxleOptions{Candidate: car})
		if err != nil {
			t.Fatal(err)
		}
		c := &axle.Cars[0]
		for k, want := range []string{
			number.Decimal(math.Abs(float64(c.Scrub.Left)), 3), number.Decimal(float64(c.Drag), 1),
			style.Slope(math.Abs(float64(c.AxleSteer.Left))), style.LongNumber(math.Abs(float64(c.Drift.Left))),
		} {
			if got := rows[k][i+1]; got != want {
				t.Errorf("%s of %s: %s, the engine says %s", rows[k][0], car, got, want)
			}
		}
	}
}

// TestBeforeAndAfterStandsStill opens the view for a reader without motion: nothing moves by
// itself, and the button moves the wheels by one place.
func TestBeforeAndAfterStandsStill(t *testing.T) {
	page := openSheet(t, Options{Still: true})
	openPanel(page, "compare")
	click(page, "#show-cars")
	page.WaitTrue(`document.querySelector("#show")?.open === true`)
	page.WaitText("#show-play", "Play")
	waitFrame(page)
	if mm := Eval[float64](page, `document.querySelector("#show-travel").valueAsNumber`); mm != 0 {
		t.Errorf("the wheels stand at %g mm before anything is pressed", mm)
	}
	click(page, "#show-play")
	page.WaitTrue(`document.querySelector("#show-travel").valueAsNumber > 20`)
	click(page, "#show-motion-roll")
	page.WaitTrue(`document.querySelectorAll(".show-figures strong").length === 4`)
	page.Shot("show roll")
	page.WaitTrue(`(([l, r]) => l.textContent !== "" && l.textContent !== r.textContent)(document.querySelectorAll(".show-figures strong"))`)
}

// TestBeforeAndAfterHasTheScreen opens the view by a press of a hand: the browser gives it the
// whole screen, and leaving that leaves the view.
func TestBeforeAndAfterHasTheScreen(t *testing.T) {
	page := openSheet(t, Options{})
	openPanel(page, "compare")
	at := middle(page, "#show-cars")
	page.Do(chromedp.MouseClickXY(at.X, at.Y))
	page.WaitTrue(`document.fullscreenElement?.className.includes("show-box")`)
	Eval[chromedp.Void](page, `document.exitFullscreen()`)
	page.WaitTrue(`!document.querySelector("#show")`)
	waitFocus(page, "show-cars")
}
