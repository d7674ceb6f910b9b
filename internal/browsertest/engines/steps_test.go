package engines

import (
	"fmt"
	"os"
	"testing"

	"toewright/internal/browsertest"
)

// panels are the steps and their ways, with what is there once one stands.
var panels = []struct{ step, way, stands string }{
	{"car", "", "#car-values"}, {"readings", "", "#new-run"},
	{"find", "search", "#find"}, {"find", "map", "#map-least"}, {"find", "tradeoff", "#panel"}, {"find", "parts", "#choose"},
	{"compare", "", "#car-0"}, {"make", "sheet", "#part-drawing"}, {"make", "series", "#forge"},
}

// screens are the sizes that the page is held to, in CSS pixels. Firefox and WebKit's small
// browser have a least width of their own: what they come to is what is looked at.
var screens = [][2]int{{1440, 900}, {1024, 768}, {390, 844}, {360, 640}}

// TestStepsHold opens every step in each engine, by day at every size and by night on a
// desk: nothing ends beyond its panel, and the checker finds nothing that bars a reader.
func TestStepsHold(t *testing.T) {
	axe, err := os.ReadFile("../node_modules/axe-core/axe.min.js")
	if err != nil && os.Getenv("CI") == "true" {
		t.Fatal(err)
	}
	for _, e := range All {
		for _, dark := range []bool{false, true} {
			t.Run(fmt.Sprint(e.Name, map[bool]string{true: " by night"}[dark]), func(t *testing.T) {
				p := mustOpen(t, e, 1440, 900, Options{Dark: dark})
				if night := get[bool](p, `matchMedia("(prefers-color-scheme: dark)").matches`); night != dark {
					t.Errorf("the page is dark: %t, want %t", night, dark)
				}
				for i, size := range screens {
					if dark && i > 0 {
						break
					}
					p.must(p.s.Size(size[0], size[1]))
					checker := ""
					if i%2 == 0 {
						checker = string(axe)
					}
					p.holds(checker)
				}
			})
		}
	}
}

// holds looks at every step at the size that the window has, with the checker too if there
// is one.
func (p *page) holds(checker string) {
	p.t.Helper()
	for _, panel := range panels {
		p.turnTo(panel.step, panel.way)
		p.wait(`document.querySelector(` + quote(panel.stands) + `)`)
		at := fmt.Sprintf("%d px, %s %s", get[int](p, `innerWidth`), panel.step, panel.way)
		for _, wide := range get[[]string](p, browsertest.Overflow) {
			p.t.Errorf("%s: %s px beyond the panel", at, wide)
		}
		p.shot(at)
		if checker == "" {
			continue
		}
		faults, err := ValueAfter[[]string](p.s, checker, browsertest.Findings)
		p.must(err)
		for _, fault := range faults {
			p.t.Errorf("%s: %s", at, fault)
		}
	}
}

// turnTo opens a step and one of its ways, if there is one, by their buttons but without a
// pointer: what a panel still draws may move them from under it.
func (p *page) turnTo(step, way string) {
	p.t.Helper()
	press := func(id, attribute string) {
		get[any](p, `(document.querySelector(`+quote(id)+`).click(), null)`)
		p.wait(`document.querySelector(` + quote(id) + `)?.getAttribute("` + attribute + `") === "true"`)
	}
	press("#step-"+step, "aria-selected")
	if way != "" {
		p.wait(`document.querySelector(` + quote("#way-"+way) + `)`)
		press("#way-"+way, "aria-pressed")
	}
}
