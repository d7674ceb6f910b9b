package browsertest

import (
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// tapper counts what a thumb presses, each where it stands on the screen.
type tapper struct {
	page           *Page
	digits, others int
}

// tap presses a control that has to be in view and under nothing.
func (c *tapper) tap(selector string) {
	c.page.t.Helper()
	const press = `(() => {
		const e = document.querySelector(SELECTOR), r = e.getBoundingClientRect();
		const at = document.elementFromPoint(r.x + r.width / 2, r.y + r.height / 2);
		if (!at || !e.contains(at)) return "under " + (at ? at.outerHTML.slice(0, 80) : "nothing: it is out of view") + " at " + r.y;
		if (r.width < 43.5 || r.height < 43.5) return "only " + r.width + " x " + r.height;
		e.click();
		return "";
	})()`
	if why := Eval[string](c.page, strings.Replace(press, "SELECTOR", quote(selector), 1)); why != "" {
		c.page.t.Fatalf("%s: %s", selector, why)
	}
	Eval[bool](c.page, `new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))`)
	c.others++
}

// keys presses keys of the keypad, Next at every |.
func (c *tapper) keys(keys string) {
	c.page.t.Helper()
	for _, key := range strings.Split(keys, "") {
		switch {
		case key == "|":
			c.tap("#pad-next")
			continue
		case strings.Contains("0123456789", key):
			c.digits++
			c.others--
		}
		c.tap(`.pad-keys [data-key="` + key + `"]`)
	}
}

// startClean starts from a template and opens its readings, of which it has none.
func startClean(p *Page) {
	openPanel(p, "study")
	click(p, "#new-study")
	click(p, "#template-double-wishbone-rack")
	openPanel(p, "readings")
	p.WaitTrue(`!!document.querySelector("#no-readings")`)
}

// TestThreeStacks enters three stacks of five heights on a phone, both sides, on a car of
// one's own with no runs: at most 190 presses, 60 of them of no digit.
func TestThreeStacks(t *testing.T) {
	page := Open(t, Options{Width: 390, Height: 844, Touch: true})
	startClean(page)
	c := &tapper{page: page}
	runs := []string{"|", "±6|", "|"}
	values := []string{"114|163|", "66|92|", "±5|0|", "±58|±72|", "±131|±150|"}
	for i, stack := range runs {
		Eval[chromedp.Void](page, `void document.querySelector("#new-run").scrollIntoView({block: "center"})`)
		c.tap("#new-run")
		page.WaitTrue(`document.querySelector(".pad-input.current")?.id === "pad-Stack"`)
		if i == 0 {
			Eval[chromedp.Void](page, `void (document.querySelector("#gauge-box").open = true)`)
			typeInto(page, "#fine", "true")
			Eval[chromedp.Void](page, `void (document.querySelector("#gauge-box").open = false)`)
			Eval[chromedp.Void](page, `void document.querySelector(".pad-input.current").scrollIntoView({block: "nearest"})`)
			c.others += 3 // the gauge is opened, dials chosen in the list
		}
		c.keys(stack)
		for row, keys := range values {
			if i == 0 && row < 2 {
				c.keys([]string{"±50|", "±25|"}[row])
			}
			c.keys(keys)
		}
		if i == 0 {
			page.Shot("readings run complete")
		}
	}
	page.Shot("readings three stacks")
	const rows = `[...document.querySelectorAll(".run-rows tbody tr")].filter((r) => r.querySelector(".cell")).map((r) => [...r.querySelectorAll(".cell")].map((c) => c.textContent).join(" ")).join("; ")`
	if got, want := Eval[string](page, rows), "−50 114 163; −25 66 92; 0 −5 0; +25 −58 −72; +50 −131 −150"; got != want {
		t.Errorf("rows %q, want %q", got, want)
	}
	if got := Eval[string](page, `[...document.querySelectorAll(".runs .segments button")].map((b) => b.textContent).join("; ")`); got != "Run 1, as measured; Run 2, 6 down; Run 3, 12 down" {
		t.Errorf("runs %q", got)
	}
	t.Logf("%d presses, %d of them of no digit", c.digits+c.others, c.others)
	if c.digits+c.others > 190 || c.others > 60 {
		t.Errorf("%d presses, %d of them of no digit, want at most 190 and 60", c.digits+c.others, c.others)
	}
	click(page, "#remove-run")
	page.WaitTrue(`document.querySelectorAll(".runs .segments button").length === 2`)
	click(page, "#undo")
	page.WaitTrue(`document.querySelectorAll(".runs .segments button").length === 3`)
}

// TestGaugeThatTypes has a gauge type into the row as fast as keys can come.
func TestGaugeThatTypes(t *testing.T) {
	page := Open(t, Options{Width: 1440, Height: 900})
	startClean(page)
	click(page, "#new-run")
	page.WaitTrue(`document.activeElement?.id === "pad-Stack"`)
	typed := "\n-50\n+1.20\n-1.3\n-25\n0.6\n-0.7\n0.01\n-0.02\n"
	for _, line := range strings.SplitAfter(typed, "\n") {
		burst(page, line)
	}
	page.WaitTrue(padShows + ` === "25|| at Left, −50 1.20 −1.30; −25 0.60 −0.70; 0 0.01 −0.02"`)
	page.Shot("readings gauge typed")
	click(page, ".run-rows .cell")
	page.WaitTrue(`document.activeElement?.id === "pad-Travel" && document.activeElement.value === "−50"`)
	page.Shot("readings row opened")
	burst(page, "\n1.25\n\n")
	page.WaitTrue(padShows + ` === "25|| at Left, −50 1.25 −1.30; −25 0.60 −0.70; 0 0.01 −0.02"`)
}

// burst presses keys as fast as they can come, each where the keyboard is then.
func burst(p *Page, keys string) {
	p.t.Helper()
	Eval[bool](p, `(async () => {
		for (const c of `+quote(keys)+`) {
			document.activeElement.dispatchEvent(new KeyboardEvent("keydown", {key: c === "\n" ? "Enter" : c, bubbles: true, cancelable: true}));
			await new Promise((next) => setTimeout(next));
		}
		return true;
	})()`)
}

// TestOtherHand has Next at the left edge, and keeps it.
func TestOtherHand(t *testing.T) {
	page := Open(t, Options{Width: 390, Height: 844, Touch: true})
	click(page, "#step-readings")
	const left = `document.querySelector("#pad-next").getBoundingClientRect().left < 40`
	page.WaitTrue(`!!document.querySelector("#pad-next") && !(` + left + `)`)
	Eval[chromedp.Void](page, `void document.querySelector("#pad-Left").focus()`)
	page.WaitTrue(`!!document.querySelector("#other-hand")`)
	click(page, "#other-hand")
	page.WaitTrue(left)
	page.Shot("readings left-handed")
	page.Reload()
	page.WaitTrue(`!!document.querySelector("#pad-next") && ` + left)
}

// TestHalfAFieldIsKept types into a field, loads the page anew in the middle of the number,
// and finds it; Enter then takes it, and Escape gives it up.
func TestHalfAFieldIsKept(t *testing.T) {
	page := Open(t, Options{})
	page.WaitOfflineReady()
	openPanel(page, "car")
	const value = `document.querySelector("#wheelbase")?.value`
	page.WaitTrue(value + ` !== undefined`)
	before := Eval[string](page, value)
	half := func() {
		Eval[chromedp.Void](page, `(() => {
			const field = document.querySelector("#wheelbase");
			field.focus();
			field.value = "24";
			field.dispatchEvent(new Event("input", {bubbles: true}));
		})()`)
		time.Sleep(lostWithin)
		page.Reload()
		page.WaitTrue(value + ` === "24"`)
	}
	press := func(key string) {
		Eval[chromedp.Void](page, `(() => {
			const field = document.querySelector("#wheelbase");
			field.focus();
			field.dispatchEvent(new KeyboardEvent("keydown", {key: `+quote(key)+`, bubbles: true, cancelable: true}));
		})()`)
	}
	half()
	press("Escape")
	page.WaitTrue(value + " === " + quote(before))
	half()
	press("Enter")
	page.WaitTrue(`document.querySelector("#wheelbase").value.startsWith("24.00")`)
}

// TestHalfATextIsKept types notes and a table of points without leaving the field, loads the
// page anew, and finds both; the notes are the study's once the field is left.
func TestHalfATextIsKept(t *testing.T) {
	page := Open(t, Options{})
	page.WaitOfflineReady()
	for _, tt := range []struct{ panel, field string }{{"car", "#study-notes"}, {"car", "#points-text"}} {
		openPanel(page, tt.panel)
		page.WaitTrue(`!!document.querySelector(` + quote(tt.field) + `)`)
		Evalf[chromedp.Void](page, `(() => {
			const field = document.querySelector(%q);
			field.value = "half a line";
			field.dispatchEvent(new Event("input", {bubbles: true}));
		})()`, tt.field)
		time.Sleep(lostWithin)
		page.Reload()
		openPanel(page, tt.panel)
		page.WaitTrue(`document.querySelector(` + quote(tt.field) + `)?.value === "half a line"`)
	}
	openPanel(page, "study")
	Eval[chromedp.Void](page, `(() => { const field = document.querySelector("#study-notes"); field.focus(); field.blur(); })()`)
	time.Sleep(lostWithin)
	page.Reload()
	openPanel(page, "study")
	page.WaitTrue(`document.querySelector("#study-notes")?.value === "half a line"`)
	if kept := Eval[bool](page, `!!document.querySelector("#undo:not([disabled])")`); !kept {
		t.Error("notes that were left cannot be undone: they are not the study's")
	}
}
