package browsertest

import (
	"fmt"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"toewright/internal/study"
)

// spilt is a script that returns the labels of a picture that reach out of it.
const spilt = `(async () => {
	const file = new DOMParser().parseFromString(await %s.text(), "image/svg+xml");
	const style = new CSSStyleSheet();
	for (const sheet of file.querySelectorAll("style")) {
		style.insertRule("@media all {" + sheet.textContent + "}");
		sheet.remove(); // the page's policy lets nothing in but its own
	}
	const holder = document.body.appendChild(document.createElement("div"));
	const shadow = holder.attachShadow({ mode: "open" });
	shadow.adoptedStyleSheets = [style];
	const svg = shadow.appendChild(document.importNode(file.documentElement, true));
	const frame = svg.getBoundingClientRect();
	const out = [...svg.querySelectorAll("text")].filter((text) => {
		const box = text.getBoundingClientRect();
		return box.width > 0 && (box.left < frame.left - 0.5 || box.right > frame.right + 0.5 || box.top < frame.top - 0.5 || box.bottom > frame.bottom + 0.5);
	}).map((text) => text.textContent);
	holder.remove();
	return out;
})()`

// TestPicturesHoldTheirLabels saves the drawing and the curves, in both units and two styles
// of toe: every label lies on the picture.
func TestPicturesHoldTheirLabels(t *testing.T) {
	page := Open(t, Options{Expected: []string{"Applying inline style violates"}}) // of the files, whose styles come in another way
	for _, key := range []string{"strut-rack", "solid-axle-rack"} {
		template := study.Template{Key: key}
		for _, display := range []*study.Display{nil, {Units: study.Inch, Fraction: 32, Toe: "indicators", Base: 381}} {
			d := template.Document()
			d.Display = display
			page.openFile(d)
			page.WaitTrue(openName + " === " + quote(d.Name) + ` && document.querySelector("#message").textContent.includes("is open")`)
			openPanel(page, "sheet")
			page.WaitTrue(`!!document.querySelector("#export-0")`)
			Eval[chromedp.Void](page, catchFiles)
			for _, button := range []string{"#export-0", "#export-2"} {
				Eval[chromedp.Void](page, `void (window.files = [])`)
				click(page, button)
				page.WaitTrue(`!!` + caught("image/svg+xml"))
				if out := Evalf[[]string](page, spilt, caught("image/svg+xml")); len(out) > 0 {
					t.Errorf("%s, %+v: %s: %q reach out of the picture", template.Key, display, button, out)
				}
			}
			page.Shot("export " + template.Key)
		}
	}
}

// dim is a script that looks at a button under the pointer: the contrast of its word by WCAG
// 2.1, 21 at most.
const dim = `((selector) => {
	const light = (colour) => {
		const canvas = new OffscreenCanvas(1, 1).getContext("2d");
		canvas.fillStyle = colour;
		canvas.fillRect(0, 0, 1, 1);
		const linear = [...canvas.getImageData(0, 0, 1, 1).data].slice(0, 3).map((c) => (c /= 255) <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
		return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
	};
	const button = document.querySelector(selector);
	let behind = button;
	while (getComputedStyle(behind).backgroundColor === "rgba(0, 0, 0, 0)") behind = behind.parentElement;
	const [a, b] = [light(getComputedStyle(button).color), light(getComputedStyle(behind).backgroundColor)].sort((x, y) => y - x);
	return button.matches(":hover") ? (a + 0.05) / (b + 0.05) : 0;
})(%s)`

// leastContrast is what a word needs to be read, by WCAG 2.1, 1.4.3.
const leastContrast = 4.5

// TestWordsUnderThePointer holds the pointer over every button of every panel, by day and by
// night: its word can be read.
func TestWordsUnderThePointer(t *testing.T) {
	for _, dark := range []bool{false, true} {
		page := Open(t, Options{Dark: dark})
		for _, tab := range Eval[[]string](page, `[...document.querySelectorAll(".step")].map((tab) => tab.id)`) {
			click(page, "#"+tab)
			page.WaitTrue(`document.querySelector("#` + tab + `").getAttribute("aria-selected") === "true"`)
			count := Eval[int](page, `[...document.querySelectorAll("button")].filter((b) => !b.disabled && b.checkVisibility()).map((b, i) => b.dataset.looked = i).length`)
			for i := range count {
				selector := fmt.Sprintf(`[data-looked="%d"]`, i)
				at := Evalf[[]float64](page, `(() => {
					const button = document.querySelector(%s);
					if (!button) return [];
					button.scrollIntoView({block: "center"});
					const box = button.getBoundingClientRect();
					const at = [box.x + box.width / 2, box.y + box.height / 2];
					return document.elementFromPoint(...at) === button ? at : [];
				})()`, quote(selector))
				if len(at) == 0 {
					continue // lies under another, or has gone
				}
				page.Do(chromedp.MouseEvent(chromedp.MouseMoved, at[0], at[1]))
				if got := Evalf[float64](page, dim, quote(selector)); got != 0 && got < leastContrast {
					t.Errorf("dark %t, %s: the word of %q has a contrast of %.1f under the pointer, want %.1f", dark, tab,
						Evalf[string](page, `document.querySelector(%s).textContent`, quote(selector)), got, leastContrast)
				}
			}
			Eval[chromedp.Void](page, `void document.querySelectorAll("[data-looked]").forEach((b) => delete b.dataset.looked)`)
		}
	}
}

// TestChoicesStayMarked finds twice, which moves the panel around its choices: of each group
// one word is marked.
func TestChoicesStayMarked(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "search")
	before := ""
	for round := range 3 {
		click(page, "#find")
		page.WaitTrue(`![null, undefined, ` + quote(before) + `].includes(document.querySelector("#answer h2")?.textContent)`)
		before = Eval[string](page, `document.querySelector("#answer h2").textContent`)
		empty := Eval[[]string](page, `(() => {
			const groups = {};
			for (const r of document.querySelectorAll("input[type=radio]")) groups[r.name] = groups[r.name] || r.checked;
			return Object.keys(groups).filter((name) => !groups[name]);
		})()`)
		if len(empty) > 0 {
			t.Errorf("after search %d none is marked of %q", round+1, empty)
		}
	}
}

// TestColumnsHoldTheirFigures shows cars whose sides differ, in the widest numbers: no
// figure reaches out of its cell.
func TestColumnsHoldTheirFigures(t *testing.T) {
	d := named(t, "unlike sides")
	d.Suspension.Right = nil
	d.Candidates = []study.Candidate{{Name: "one side", Changes: study.Changes{"tieRodOuterHeight@left": 12}}}
	d.Display = &study.Display{Units: study.Inch, Fraction: 32, Toe: "indicators", Base: 381, Yardstick: ""}
	for _, o := range []Options{{}, {Width: 1024, Height: 768}, {Width: 390, Height: 844, Touch: true}} {
		page := Open(t, o)
		page.openFile(d)
		page.WaitTrue(openName + ` === "unlike sides"`)
		openPanel(page, "compare")
		click(page, "#car-1 .compare-name")
		page.WaitTrue(`!!document.querySelector("#car-1.selected") && !!document.querySelector("#cars .sides")`)
		page.Shot(fmt.Sprintf("unlike sides %d", o.Width))
		out := Eval[[]string](page, `[...document.querySelectorAll("#cars td")].filter((cell) => {
			const box = cell.getBoundingClientRect();
			return [...cell.children].some((e) => !e.classList.contains("unseen") && (e.getBoundingClientRect().right > box.right + 0.5 || e.getBoundingClientRect().left < box.left - 0.5));
		}).map((cell) => cell.textContent)`)
		if len(out) > 0 {
			t.Errorf("%d px wide: figures reach out of their cells: %q", o.Width, out)
		}
	}
}

// TestBenchSheetArrives presses the button once: the file comes, and till then it is said how
// far it is.
func TestBenchSheetArrives(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "sheet")
	page.WaitTrue(`!!document.querySelector("#save-sheet")`)
	Eval[chromedp.Void](page, catchFiles)
	began := time.Now()
	click(page, "#save-sheet")
	page.WaitTrue(`!!document.querySelector("#save-sheet-progress") || !!` + caught("text/html"))
	page.WaitTrue(`!!` + caught("text/html"))
	t.Logf("after %s", time.Since(began).Round(10*time.Millisecond))
	page.WaitTrue(caught("text/html") + `.text().then((text) => text.includes("</html>"))`)
}
