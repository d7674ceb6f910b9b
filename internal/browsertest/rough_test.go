package browsertest

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"

	"toewright/internal/study"
)

// rough works on whatever is shown, by chance of a seed: buttons, some twice, menus, sliders, and
// fields with numbers and without. What leaves the page or the study is let be. It returns what
// it did.
const rough = `(async (seed, count) => {
	const pause = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 20))));
	let state = seed;
	const chance = (n) => { state = (state * 1103515245 + 12345) %% 2147483648; return Math.floor(state / 65536) %% n; };
	const leaves = /print|save|file|link|html|dxf|step$|svg|copy|open|template|show|before and|undo|redo|csv|png|choose|readings$|find$|car$|play|form to/i;
	const tell = (e, ...kinds) => kinds.forEach((kind) => e.dispatchEvent(new Event(kind, {bubbles: true})));
	const done = [];
	for (let i = 0; i < count; i++) {
		if (i %% 12 === 0) {
			document.querySelectorAll(".step")[chance(5)].click();
			await pause();
			const ways = [...document.querySelectorAll("#panel > .segments button")];
			if (ways.length) ways[chance(ways.length)].click();
			await pause();
			document.querySelectorAll("#panel details:not(.explain)").forEach((d) => { if (chance(2)) d.open = true; });
			await pause();
		}
		const list = [...document.querySelectorAll("#panel button, #panel select, #panel input, #why button, .strip button, .tool-line button, .tool-line select")]
			.filter((e) => e.checkVisibility() && !e.disabled && e.type !== "file" && e.id !== "orbit" && !leaves.test(e.textContent.trim()));
		if (!list.length) continue;
		const e = list[chance(list.length)];
		done.push(e.tagName + "#" + e.id + " " + e.textContent.slice(0, 20));
		if (e.tagName === "SELECT") { e.selectedIndex = chance(e.options.length); tell(e, "change"); }
		else if (e.type === "text") { e.focus(); e.value = ["5", "0", "-3", "abc", "", "12.5"][chance(6)]; tell(e, "input", "change"); e.blur(); }
		else if (e.type === "range") { e.value = chance(100) - 50; tell(e, "input", "change"); }
		else { e.click(); if (chance(3) === 0) e.click(); }
		await pause();
	}
	return done;
})(%d, %d)`

// undoAll presses Undo until there is nothing left, and returns how often.
const undoAll = `(async () => {
	let n = 0;
	for (let idle = 0; idle < 10 && n < 400;) {
		const undo = document.querySelector("#undo");
		if (undo.disabled) idle++;
		else { undo.click(); n++; idle = 0; }
		await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
	}
	return n;
})()`

// studyFile returns the text that the study is saved as.
func studyFile(p *Page) string {
	p.t.Helper()
	openPanel(p, "study")
	Eval[chromedp.Void](p, catchFiles)
	click(p, "#save-file")
	p.WaitTrue(`!!` + caught("application/json"))
	text := Eval[string](p, caught("application/json")+`.text()`)
	click(p, "#study-menu")
	p.WaitTrue(`!document.querySelector("#study-menu-box")`)
	return text
}

// TestUndoComesBackFromAnything works roughly on the page: nothing is complained of, and Undo
// leads back to the study as it was, to the byte.
func TestUndoComesBackFromAnything(t *testing.T) {
	for seed, o := range []Options{{}, {Width: 390, Height: 844, Touch: true}} {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			page := openSheet(t, o)
			was := studyFile(page)
			done := Evalf[[]string](page, rough, 17+31*seed, 24)
			undone := Eval[int](page, undoAll)
			if undone == 0 {
				t.Errorf("nothing was to undo after %q", done)
			}
			if now := studyFile(page); now != was {
				t.Errorf("%d times undone after %q the study is\n%s\nwas\n%s", undone, done, now, was)
			}
		})
	}
}

// TestLongNames opens a study whose name and whose cars' are long, from right to left, or without
// a space: nothing becomes wider than the screen, and all can be pressed.
func TestLongNames(t *testing.T) {
	names := []string{strings.Repeat("W", 200), "מכונית מבחן ארוכה مع نص عربي طويل", strings.Repeat("Überlanger Name ohne Ende ", 8)}
	d := named(t, names[0])
	d.Candidates = nil
	for i := range 7 {
		d.Candidates = append(d.Candidates, study.Candidate{Name: fmt.Sprint(i, " ", names[i%len(names)]), Note: names[0], Changes: study.Changes{"tieRodOuterHeight": float64(i)}})
	}
	for _, sizes := range [][]Options{screens[:2], append(screens[2:], Options{Width: 320, Height: 640, Touch: true})} {
		page := openSheet(t, sizes[0])
		page.openFile(d)
		page.WaitTrue(`document.querySelectorAll(".key").length === 8 && !document.querySelector(".bottom-line.fresh")`)
		Eval[chromedp.Void](page, `void [...document.querySelectorAll(".key")].find((e) => e.textContent.includes("WWW")).click()`)
		everyPanel(page, sizes, func(width int64, key string) {
			page.Shot(fmt.Sprintf("names %d %s", width, key))
			for _, wide := range Eval[[]string](page, Overflow) {
				t.Errorf("%d px, %s: %s px beyond the panel", width, key, wide)
			}
			if key != "compare" && key != "series" {
				return
			}
			for _, found := range Eval[[]string](page, covered) {
				t.Errorf("%d px, %s: cannot be pressed: %.160s", width, key, found)
			}
		})
	}
}

// TestResizedUnderDrag gives the window another size while a ball is held: the drag goes on, and
// ends where it is let go.
func TestResizedUnderDrag(t *testing.T) {
	page := openSheet(t, Options{})
	press := func(kind input.DispatchMouseEventType, x, y float64) {
		page.Do(chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
			_, err := chromedp.Call(ctx, input.DispatchMouseEvent, input.DispatchMouseEventParams{Type: kind, X: x, Y: y, Button: "left", ClickCount: 1})
			return err
		}))
		waitFrame(page)
	}
	height, at := value(t, page, outerBall), middle(page, outerBall)
	press("mousePressed", at.X, at.Y)
	press("mouseMoved", at.X, at.Y+5)
	page.resize(screens[1])
	press("mouseMoved", at.X-100, at.Y+15)
	press("mouseReleased", at.X-100, at.Y+15)
	if got := value(t, page, outerBall); !(got < height) {
		t.Errorf("height of the outer ball after a drag down = %g mm, from %g", got, height)
	}
	page.WaitTrue(`!document.querySelector(".held")`)
	left := value(t, page, outerBall)
	press("mouseMoved", at.X, at.Y+90)
	if got := value(t, page, outerBall); got != left {
		t.Errorf("the ball goes on to %g mm after it was let go at %g", got, left)
	}
}

// TestChosenInTheReadersColours has the reader's own colours stand in for the page's: what is
// chosen of steps, ways, cars and buttons has another ground than what is not.
func TestChosenInTheReadersColours(t *testing.T) {
	page := openSheet(t, Options{})
	page.Do(chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: []*emulation.MediaFeature{{Name: "forced-colors", Value: "active"}},
		})
		return err
	}))
	page.WaitTrue(`matchMedia("(forced-colors: active)").matches`)
	const alike = `(() => {
		const ground = (e) => getComputedStyle(e).backgroundColor;
		return [...document.querySelectorAll("[aria-pressed=true], .step[aria-selected=true]")].filter((e) => e.checkVisibility()).filter((e) => {
			const other = [...e.parentElement.children].find((o) => o !== e && o.tagName === e.tagName && o.checkVisibility() && (o.ariaPressed ?? o.ariaSelected) === "false");
			return other && ground(other) === ground(e);
		}).map((e) => e.id + " " + e.textContent.slice(0, 20));
	})()`
	for _, panel := range panels {
		if panel.key == "study" {
			continue
		}
		openPanel(page, panel.key)
		waitFrame(page)
		for _, found := range Eval[[]string](page, alike) {
			t.Errorf("%s: %s looks as what is not chosen", panel.key, found)
		}
	}
}
