package browsertest

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"toewright/internal/report"
	"toewright/internal/study"
)

// TestCardPrints prints the fitting card of a candidate of the demo on both papers, in mm and in
// inches: it is one page, and a printer without colour loses nothing of it.
func TestCardPrints(t *testing.T) {
	tab := blankTab(t)
	for _, units := range []study.Units{study.Millimetre, study.Inch} {
		for _, paper := range []report.Paper{report.A4, report.Letter} {
			d := mustTemplate(t, "double-wishbone-rack")
			d.Display = &study.Display{Units: units}
			card := writtenAs(t, d, report.Options{Candidate: d.Candidates[1].Name, Form: report.CardForm, Paper: paper, Cars: new(fewCars)})
			name := "card " + string(units) + " " + string(paper)
			pdf := printed(tab, card)
			if n := pages(pdf); n != 1 {
				t.Errorf("%s prints on %d pages, want 1", name, n)
			}
			keep(t, name, pdf)
			for _, what := range Eval[[]string](tab, lostInGrey) {
				t.Errorf("%s: lost without colour: %s", name, what)
			}
		}
	}
	Eval[chromedp.Void](tab, `(() => { // faults that the check must see
		document.querySelector("td").style.color = "#c99";
		document.querySelector("h1").style.backgroundColor = "#fdd";
		document.querySelectorAll("svg .line").forEach((e) => e.style.strokeDasharray = "none");
	})()`)
	if got := Eval[[]string](tab, lostInGrey); len(got) < 3 {
		t.Errorf("pale words, a ground and curves alike are seen as %q", got)
	}
}

// lostInGrey lists what of a page is told by its colour alone: words that are too pale in grey
// (WCAG 2.1, 1.4.3: 4.5 to 1), grounds, and curves of one picture whose dashes are alike.
const lostInGrey = `(() => {
	const light = (colour) => colour.match(/[\d.]+/g).slice(0, 3).map((c) => (c /= 255) <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)
		.reduce((sum, c, i) => sum + c * [0.2126, 0.7152, 0.0722][i], 0);
	const out = [];
	for (const e of document.querySelectorAll("body *")) {
		const style = getComputedStyle(e), text = [...e.childNodes].some((n) => n.nodeType === 3 && n.data.trim());
		const ink = e.closest("svg") ? style.fill : style.color;
		if (text && !e.closest("title, desc, style") && 1.05 / (light(ink) + 0.05) < 4.5) out.push("pale: " + e.textContent.slice(0, 30));
		if (style.backgroundColor !== "rgba(0, 0, 0, 0)" && style.backgroundColor !== "rgb(255, 255, 255)") out.push("ground: " + e.tagName);
	}
	for (const svg of document.querySelectorAll("svg")) {
		const dashes = {};
		for (const e of svg.querySelectorAll(".line")) {
			const car = [...e.classList].find((c) => /^s\d$/.test(c)), dash = getComputedStyle(e).strokeDasharray;
			if ((dashes[dash] ??= car) !== car) out.push("curves of " + dashes[dash] + " and " + car + " are both " + dash);
		}
	}
	return [...new Set(out)];
})()`

// TestCardOfThePage takes the card by the page's own button, with the server gone: that too is
// one page, of the car that is selected.
func TestCardOfThePage(t *testing.T) {
	page := openSheet(t, Options{Width: 390, Height: 844, Touch: true})
	page.WaitOfflineReady()
	page.Stop()
	choose(page, "#selected", "2")
	openPanel(page, "sheet")
	Eval[chromedp.Void](page, catchFiles)
	click(page, "#save-card")
	page.WaitTrue(`!!` + caught("text/html"))
	card := Eval[string](page, caught("text/html")+`.text()`)
	page.Start()
	tab := blankTab(t)
	if n := pages(printed(tab, []byte(card))); n != 1 {
		t.Errorf("%d pages, want 1", n)
	}
	want := Eval[string](page, `document.querySelector("#selected").selectedOptions[0].textContent`)
	if got := Eval[string](tab, `document.title`); got == "" || !strings.Contains(got, want) {
		t.Errorf("the card is titled %q, want the car %q in it", got, want)
	}
}
