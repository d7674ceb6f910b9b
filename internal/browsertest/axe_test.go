package browsertest

import (
	"errors"
	"io/fs"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// axeScript is the accessibility checker that package.json pins.
const axeScript = "node_modules/axe-core/axe.min.js"

// panels are what [openPanel] opens; the button that makes the panel work; and what is
// there when it has.
var panels = []struct{ key, work, outcome string }{
	{key: "points"},
	{"tape", "#tape-begin", "#tape-question"},
	{"readings", "#fit", "#fitted"},
	{"search", "#find", "#answer"},
	{key: "map", outcome: "#map-least"},
	{key: "tradeoff"},
	{"parts", "#choose", "#choices"},
	{key: "compare"},
	{key: "sheet", outcome: "#part-drawing"},
	{"series", "#forge", "#series"},
	{key: "study"},
}

// loadAxe puts the checker on the page. The debugger evaluates it, so that the page's
// policy against foreign scripts stays as strict as it is. Where the checker is not
// installed the test is left out, but not in continuous integration.
func loadAxe(p *Page) {
	p.t.Helper()
	script, err := os.ReadFile(axeScript)
	if errors.Is(err, fs.ErrNotExist) && os.Getenv("CI") != "true" {
		p.t.Skip("LEFT OUT: axe-core is not installed; run make test-browser")
	}
	if err != nil {
		p.t.Fatal(err)
	}
	Eval[chromedp.Void](p, string(script)+"\n;void 0")
}

// check fails the test for what is wrong with the page as it stands.
func check(p *Page, where string) {
	p.t.Helper()
	for _, fault := range Eval[[]string](p, Findings) {
		p.t.Errorf("%s: %s", where, fault)
	}
}

// TestNothingBarsAReader checks every panel, and what comes of its work, for faults of
// accessibility: contrast, names, roles, structure. The checker takes the contrast only of
// what is in view, so the desktop is tall enough for all of a panel.
func TestNothingBarsAReader(t *testing.T) {
	for _, tt := range []struct {
		name string
		o    Options
	}{
		{"desktop light", Options{Width: 1440, Height: 4000}},
		{"tablet dark", Options{Width: 1024, Height: 4000, Dark: true}},
		{"phone", Options{Width: 390, Height: 844, Touch: true}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			page := openSheet(t, tt.o)
			loadAxe(page)
			for _, panel := range panels {
				openPanel(page, panel.key)
				check(page, panel.key)
				if panel.work != "" {
					click(page, panel.work)
				}
				if panel.outcome != "" {
					page.WaitTrue(`!!document.querySelector(` + quote(panel.outcome) + `)`)
					check(page, panel.key+" with its outcome")
				}
			}
		})
	}
}

// TestTheCheckerFindsFaults plants a button without a name and words as pale as the paper,
// both of which the checker must see.
func TestTheCheckerFindsFaults(t *testing.T) {
	page := openSheet(t, Options{})
	loadAxe(page)
	Eval[chromedp.Void](page, `(() => {
		const panel = document.querySelector("#panel");
		const pale = document.createElement("p");
		panel.prepend(document.createElement("button"), pale);
		pale.textContent = "as pale as the paper";
		pale.style.color = "#eeeeee";
	})()`)
	found := strings.Join(Eval[[]string](page, Findings), "\n")
	for _, rule := range []string{"button-name (critical)", "color-contrast (serious)"} {
		if !strings.Contains(found, rule) {
			t.Errorf("%s was not found in %q", rule, found)
		}
	}
}
