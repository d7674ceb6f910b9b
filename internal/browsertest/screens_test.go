package browsertest

import (
	"fmt"
	"os"
	"slices"
	"testing"

	"github.com/chromedp/chromedp"
)

// screens are the sizes that the page is held to.
var screens = []Options{
	{Width: 1440, Height: 900},
	{Width: 1024, Height: 768},
	{Width: 390, Height: 844, Touch: true},
	{Width: 360, Height: 640, Touch: true},
}

// resize gives the window of a page that is open another size, pointer and scheme.
func (p *Page) resize(o Options) {
	p.t.Helper()
	p.Do(o.emulate()...)
	p.WaitTrue(fmt.Sprintf(`innerWidth === %d && matchMedia("(prefers-color-scheme: dark)").matches === %t`, o.Width, o.Dark))
	waitFrame(p)
}

// TestScreensByNight makes a picture of every step at every size by night, where
// TOEWRIGHT_SHOTS names a folder for them, to be looked at one by one; [TestScreensHold]
// makes those by day.
func TestScreensByNight(t *testing.T) {
	if os.Getenv("TOEWRIGHT_SHOTS") == "" {
		t.Skip("no folder for pictures; set TOEWRIGHT_SHOTS")
	}
	page := openSheet(t, Options{Dark: true})
	for _, o := range screens {
		o.Dark = true
		page.resize(o)
		for _, panel := range panels {
			openPanel(page, panel.key)
			waitFrame(page)
			page.Shot(fmt.Sprintf("screen %d dark %s", o.Width, panel.key))
		}
	}
}

// tiny lists what is written smaller than 12 px.
const tiny = `[...new Set([...document.querySelectorAll("body *")]
	.filter((e) => e.checkVisibility() && [...e.childNodes].some((n) => n.nodeType === 3 && n.data.trim()))
	.filter((e) => !e.closest(".unseen, option") && parseFloat(getComputedStyle(e).fontSize) < 11.99)
	.map((e) => getComputedStyle(e).fontSize + ": " + e.tagName + " " + (e.id || e.getAttribute("class") || e.parentElement.className) + " " + e.textContent.trim().slice(0, 20)))]`

// covered lists the controls that cannot be pressed where they stand, since another lies
// over their middle; a menu that is open may. Among the drawing's handles, whose reaches overlap, the nearest wins:
// the picture itself takes the press.
const covered = `[...document.querySelectorAll("button, select, input, textarea, summary, label.file, .drawing .handle")]
	.filter((e) => e.checkVisibility({visibilityProperty: true}) && !e.closest(".unseen"))
	.filter((e) => e.closest(".menu-box") || !document.querySelector(".menu-box"))
	.map((e) => {
		if (e.closest(".menu-box") || !e.closest(".head, .tool-line, .strip, .bottom-line, .drawing")) e.scrollIntoView({block: "center", inline: "nearest"});
		if (e.closest(".strip")) e.scrollIntoView({block: "nearest", inline: "center"});
		const r = (e.querySelector(".reach") ?? e).getBoundingClientRect();
		if (!r.width || !r.height) return "";
		const at = document.elementFromPoint(r.x + r.width / 2, r.y + r.height / 2);
		const own = at && (e.contains(at) || at.contains(e) || at.closest("label")?.control === e || at.closest(".menu-box") && !e.closest(".menu-box") || e.matches(".handle") && at.closest(".drawing"));
		const name = (x) => x ? x.tagName + "#" + x.id + "." + (x.getAttribute("class") ?? "") : "nothing";
		return own ? "" : name(e) + " " + e.textContent.slice(0, 20) + " at " + [r.x, r.y, r.right, r.bottom].map(Math.round) + " is under " + name(at);
	}).filter(Boolean)`

// wrapped lists what of the head, the tool line and the bottom line takes more than a line,
// or reaches out of it.
const wrapped = `[...document.querySelectorAll(".head button, .tool-line > *, .tool-line button, .bottom-line > p, .strip-head")]
	.filter((e) => e.checkVisibility() && !e.closest(".menu-box, .views") && !e.matches(".unseen"))
	.filter((e) => innerWidth >= 1000 || !e.closest(".steps, .bottom-line")) // a bar of two lines, and no line
	.filter((e) => {
		const line = e.closest(".head, .tool-line, .bottom-line, .strip").getBoundingClientRect();
		const r = e.getBoundingClientRect();
		const words = document.createRange();
		words.selectNodeContents(e);
		const tops = new Set([...words.getClientRects()].filter((w) => w.width > 1 && w.height < 30).map((w) => Math.round(w.top / 10)));
		return r.width && (r.right > innerWidth + 0.5 || r.left < -0.5 || r.bottom > line.bottom + 1 || r.top < line.top - 1 || !e.matches(".strip-head, .cars-shown, .view-menu") && !e.closest(".step") && tops.size > 2);
	})
	.map((e) => e.tagName + "#" + e.id + "." + e.className + " " + e.textContent.slice(0, 30))`

// broken lists words that go on in another line, within themselves; names are the user's.
const broken = `[...document.querySelectorAll("body *")].flatMap((e) => [...e.childNodes].filter((n) => n.nodeType === 3 && n.data.trim()))
	.filter((n) => n.parentElement.checkVisibility() && !n.parentElement.closest(".unseen, .named, option, script, style, svg"))
	.flatMap((n) => [...n.data.matchAll(/[\p{L}\p{N}]+/gu)].filter((word) => {
		const range = document.createRange();
		range.setStart(n, word.index);
		range.setEnd(n, word.index + word[0].length);
		return new Set([...range.getClientRects()].filter((r) => r.width > 0.5).map((r) => Math.round(r.top))).size > 1;
	}).map((word) => word[0] + " of " + n.data.trim().slice(0, 40)))`

// cut lists words of the page's that end in an ellipsis for want of room; names are the user's.
const cut = `[...document.querySelectorAll("body *")]
	.filter((e) => e.checkVisibility() && getComputedStyle(e).textOverflow === "ellipsis" && e.scrollWidth > e.clientWidth + 1 && !e.matches("select, strong, .clipped, .unseen"))
	.map((e) => e.tagName + "#" + e.id + "." + e.className + " " + e.textContent.slice(0, 40))`

// TestScreensHold looks at every step at every size: nothing is wider than the screen, no
// control lies under another, no text is smaller than 12 px, and the lines about the stage
// stay lines. One page serves for all sizes of a pointer.
func TestScreensHold(t *testing.T) {
	for _, tt := range []struct {
		name  string
		sizes []Options
	}{
		{"mouse", screens[:2]},
		{"finger", append(screens[2:], Options{Width: 320, Height: 640, Touch: true})},
		{"tablet", []Options{{Width: 768, Height: 1024, Touch: true}}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			page := openSheet(t, tt.sizes[0])
			for _, o := range tt.sizes {
				page.resize(o)
				for _, panel := range panels {
					holds(page, o, panel.key)
				}
			}
		})
	}
}

// filled is the words of the buttons that are filled: one, or none.
const filled = `[...document.querySelectorAll("button, label.file, a")].filter((e) => {
	const style = getComputedStyle(e);
	return e.checkVisibility() && style.backgroundColor === getComputedStyle(Object.assign(document.querySelector("#filled-probe") ?? document.body.appendChild(Object.assign(document.createElement("i"), {id: "filled-probe"})), {style: "background: var(--filled)"})).backgroundColor;
}).map((e) => (e.querySelector("span") ?? e).textContent).join(" and ")`

// next is the button of each step and way that is filled, as what is to be done next in the
// demo: none where there is none, and in short on a phone. The study's menu lies over what is
// open.
var next = map[string][]string{
	"car": {""}, "points": {""}, "tape": {"Set six marks"}, "readings": {"Fit the car to the readings"}, "search": {"Find"}, "map": {"Go to the least"}, "tradeoff": {"Weigh them"},
	"parts": {"Try every combination"}, "compare": {"Make Spacers 12 mm", "Make it"}, "sheet": {"Print"},
	"series": {"Build the series of Spacers 12 mm"}, "study": {"Build the series of Spacers 12 mm"},
}

// holds fails the test for what of a panel does not hold at a size.
func holds(p *Page, o Options, key string) {
	p.t.Helper()
	openPanel(p, key)
	waitFrame(p)
	p.Shot(fmt.Sprintf("screen %d light %s", o.Width, key))
	where := fmt.Sprintf("%d px, %s", o.Width, key)
	if by := Eval[float64](p, `document.documentElement.scrollWidth - innerWidth`); by > 0 {
		p.t.Errorf("%s: %g px wider than the screen", where, by)
	}
	if key == "map" {
		p.WaitTrue(`!!document.querySelector("#map-best")`)
	}
	if got := Eval[string](p, filled); !slices.Contains(next[key], got) {
		p.t.Errorf("%s: %q is filled, want one of %q, the next thing to do", where, got, next[key])
	}
	if Eval[bool](p, `(() => { const why = document.querySelector("#why"); return why.checkVisibility() && why.scrollHeight > why.clientHeight + 1; })()`) {
		p.t.Errorf("%s: what is said of why toe changes is cut off", where)
	}
	for _, check := range []struct{ fault, script string }{{"too small to read", tiny}, {"cannot be pressed", covered}, {"does not hold its line", wrapped}, {"is broken within", broken}, {"is cut off", cut}} {
		for _, found := range Eval[[]string](p, check.script) {
			p.t.Errorf("%s: %s: %s", where, check.fault, found)
		}
	}
}

// TestMenusCloseByEscape opens the menus of the head and the tool line: Escape closes each
// and gives the keyboard back to its button, and so does a press elsewhere close it.
func TestMenusCloseByEscape(t *testing.T) {
	page := openSheet(t, Options{})
	for _, id := range []string{"study-menu", "units", "view"} {
		state := func(open string) string {
			return `document.querySelector("#` + id + `").getAttribute("aria-expanded") === "` + open + `"`
		}
		click(page, "#"+id)
		page.WaitTrue(state("true"))
		Evalf[chromedp.Void](page, `void [...document.querySelectorAll("#%s-box button, #%[1]s-box input")].find((e) => e.checkVisibility()).focus()`, id)
		page.Do(chromedp.KeyEvent("\u001b"))
		page.WaitTrue(state("false") + ` && document.activeElement.id === "` + id + `"`)
		click(page, "#"+id)
		page.WaitTrue(state("true"))
		at := middle(page, ".bottom-line")
		page.Do(chromedp.MouseClickXY(at.X, at.Y))
		page.WaitTrue(state("false"))
	}
}

// TestSomethingToDrag looks for handles of balls on small phones, and moves one.
func TestSomethingToDrag(t *testing.T) {
	page := openSheet(t, Options{Width: 360, Height: 640, Touch: true})
	way := -12.0
	for _, o := range []Options{{Width: 360, Height: 640, Touch: true}, {Width: 375, Height: 667, Touch: true}, {Width: 390, Height: 664, Touch: true}} {
		page.resize(o)
		for _, key := range []string{"car", "readings", "search"} {
			openPanel(page, key)
			waitFrame(page)
			height := value(t, page, outerBall)
			touchDrag(page, middle(page, outerBall), 0, way)
			if got := value(t, page, outerBall); !((got-height)*way < 0) {
				t.Errorf("%dx%d, %s: height of the outer ball after a drag by %g px = %g mm, from %g", o.Width, o.Height, key, way, got, height)
			}
			way = -way
		}
	}
}

// TestReferenceByPress selects a car of the strip by a press, and makes it the reference
// by one with Shift, or by a long one of a finger.
func TestReferenceByPress(t *testing.T) {
	page := openSheet(t, Options{})
	const shows = `document.querySelector(".key:nth-of-type(%d)").className.includes("reference")`
	Eval[chromedp.Void](page, `void document.querySelector(".key:nth-of-type(3)").dispatchEvent(new MouseEvent("click", {bubbles: true, shiftKey: true}))`)
	page.WaitTrue(fmt.Sprintf(shows, 3))
	page.WaitTrue(`document.querySelector("#reference").value === "2"`)
	page.resize(Options{Width: 1024, Height: 768, Touch: true})
	at := middle(page, ".key:nth-of-type(2)")
	touch(page, "touchStart", at)
	page.WaitTrue(fmt.Sprintf(shows, 2))
	touch(page, "touchEnd")
	click(page, ".key:nth-of-type(4)")
	page.WaitTrue(`document.querySelector(".key:nth-of-type(4)").getAttribute("aria-pressed") === "true"`)
	if !Evalf[bool](page, shows, 2) {
		t.Error("a short press changes the reference")
	}
}
