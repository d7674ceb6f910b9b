package browsertest

import (
	"context"
	"fmt"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
)

// touch makes a finger touch, move or leave a place.
func touch(p *Page, kind input.DispatchTouchEventType, at ...place) {
	p.t.Helper()
	points := []*input.TouchPoint{}
	for _, a := range at {
		points = append(points, &input.TouchPoint{X: a.X, Y: a.Y})
	}
	p.Do(chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: kind, TouchPoints: points})
		return err
	}))
}

// touchDrag drags with a finger from a place by so many pixels.
func touchDrag(p *Page, from place, x, y float64) {
	p.t.Helper()
	const steps = 8
	touch(p, input.DispatchTouchEventTypeTouchStart, from)
	for i := 1.0; i <= steps; i++ {
		touch(p, input.DispatchTouchEventTypeTouchMove, from.by(x*i/steps, y*i/steps))
		time.Sleep(screenFrame)
	}
	touch(p, input.DispatchTouchEventTypeTouchEnd)
	waitFrame(p)
}

// unreachable lists what of the sheet a finger cannot get at on the page as it stands: its
// controls and handles that are off the screen or beneath something else.
const unreachable = `[...document.querySelectorAll(".tool-line button, .tool-line select, .tool-line input, .drawing .handle .reach, .step")]
	.filter((e) => e.checkVisibility())
	.map((e) => [e, e.getBoundingClientRect()])
	.filter(([e, r]) => r.width > 0)
	.filter(([e, r]) => {
		const at = document.elementFromPoint(r.x + r.width / 2, r.y + r.height / 2);
		const own = at && (at === e || e.contains(at) || at.closest(".handle"));
		return !own || r.x < -1 || r.right > innerWidth + 1;
	})
	.map(([e, r]) => (e.id || e.parentElement.getAttribute("aria-label") || e.className) + " at " + [r.x, r.y, r.right, r.bottom].map(Math.round))`

// TestPhoneOnItsSide holds a phone sideways: the drawing is all on the screen with its
// controls and the steps, a finger can move a ball and open every panel, and nothing is
// wider than the screen.
func TestPhoneOnItsSide(t *testing.T) {
	for _, o := range []Options{
		{Width: 844, Height: 390, Touch: true},
		{Width: 740, Height: 360, Touch: true, Dark: true},
	} {
		t.Run(fmt.Sprintf("%dx%d", o.Width, o.Height), func(t *testing.T) {
			page := openSheet(t, o)
			name := fmt.Sprintf("side %d ", o.Width)
			page.Shot(name + "sheet")
			checkSheetOnItsSide(t, page)
			checkFacesOnItsSide(t, page, name)
			checkPanelsOnItsSide(t, page, name)
		})
	}
}

// checkSheetOnItsSide measures the sheet, and moves a ball with a finger.
func checkSheetOnItsSide(t *testing.T, page *Page) {
	t.Helper()
	for _, what := range Eval[[]string](page, unreachable) {
		t.Errorf("out of a finger's reach: %s", what)
	}
	const hidden = `(() => {
		const canvas = document.querySelector(".canvas").getBoundingClientRect();
		return canvas.height - Math.min(canvas.bottom, document.querySelector(".steps").getBoundingClientRect().top) + Math.max(canvas.top, 0);
	})()`
	if px := Eval[float64](page, hidden); px > 0 {
		t.Errorf("%g px of the drawing's height are off the screen or beneath the steps", px)
	}
	if px := Eval[float64](page, `document.querySelector(".canvas").clientHeight`); px < 200 {
		t.Errorf("the drawing is %g px high, want 200", px)
	}
	height := value(t, page, outerBall)
	touchDrag(page, middle(page, outerBall), 0, -12)
	if got := value(t, page, outerBall); !(got > height) {
		t.Errorf("height of the outer ball after a drag upward = %g mm, want more than %g", got, height)
	}
}

// checkFacesOnItsSide shows one view after the other, and what is folded away.
func checkFacesOnItsSide(t *testing.T, page *Page, name string) {
	t.Helper()
	for face, view := range []string{"front", "plan", "side", "detail", "orbit"} {
		choose(page, "#face", fmt.Sprint(face))
		page.WaitTrue(`[...document.querySelectorAll(".view.` + view + ` path")].some((e) => e.getAttribute("d")?.length > 40)`)
		waitFrame(page)
		page.Shot(name + "view " + view)
	}
	choose(page, "#face", "0")
	click(page, "#view")
	page.WaitTrue(`document.querySelector("#steer").checkVisibility()`)
	page.Shot(name + "more")
	if list := Eval[[]string](page, smallTargets); len(list) > 0 {
		t.Errorf("too small for a finger: %v", list)
	}
	click(page, "#view")
}

// checkPanelsOnItsSide opens each panel: its beginning comes into view.
func checkPanelsOnItsSide(t *testing.T, page *Page, name string) {
	t.Helper()
	for _, panel := range panels {
		openPanel(page, panel.key)
		waitFrame(page)
		page.Shot(name + "panel " + panel.key)
		if by := Eval[float64](page, `document.documentElement.scrollWidth - innerWidth`); by > 0 {
			t.Errorf("%s is %g px wider than the screen", panel.key, by)
		}
		part := "#panel"
		if panel.key == "study" {
			part = "#study-menu-box"
		}
		const seen = `(() => {
			const panel = document.querySelector(%q).getBoundingClientRect();
			return Math.min(panel.bottom, document.querySelector(".steps").getBoundingClientRect().top) - Math.max(panel.top, 0);
		})()`
		if px := Evalf[float64](page, seen, part); px < 150 {
			t.Errorf("%g px of %s are to be seen, want 150", px, panel.key)
		}
		for _, small := range Eval[[]string](page, smallTargets) {
			t.Errorf("%s: too small for a finger: %s", panel.key, small)
		}
	}
}
