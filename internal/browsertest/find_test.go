package browsertest

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// findSizes are the pages on which the step is looked at.
var findSizes = map[string]Options{
	"1440 light": {}, "1024 dark": {Width: 1024, Height: 768, Dark: true},
	"390 light": {Width: 390, Height: 844, Touch: true}, "360 dark": {Width: 360, Height: 640, Touch: true, Dark: true},
}

// TestFindAsked looks at each way to an answer before and after its work, at every size:
// nothing is wider than the page, and the first line of the question is the same in all.
func TestFindAsked(t *testing.T) {
	for name, o := range findSizes {
		t.Run(name, func(t *testing.T) {
			page := openSheet(t, o)
			for _, way := range []struct{ key, work, outcome string }{
				{"search", "#find", "#answer"}, {"map", "", "#map-least"}, {"tradeoff", "", "#trade"}, {"parts", "#choose", "#choices"},
			} {
				openPanel(page, way.key)
				if way.key == "search" {
					click(page, "#more-steeringArmLength") // two that may change are found in a moment
					click(page, `button[aria-label^="Let steering arm length"]`)
					page.WaitTrue(`!document.querySelector("#more-steeringArmLength")`)
				}
				if way.work != "" {
					click(page, way.work)
				}
				page.WaitTrue(`!!document.querySelector(` + quote(way.outcome) + `)`)
				if wide := Eval[float64](page, `document.documentElement.scrollWidth - innerWidth`); wide > 0 {
					t.Errorf("%s is %g px wider than the page", way.key, wide)
				}
				page.Shot("find " + way.key + " " + name)
			}
		})
	}
}

// TestCannotBeHadIsSaidFirst asks for a tie rod that is too short for any car within the
// bounds: before anything is searched the page says so, with the nearest, and takes it.
func TestCannotBeHadIsSaidFirst(t *testing.T) {
	page := openSheet(t, Options{})
	openPanel(page, "search")
	choose(page, "#add-limit", "tieRodLength")
	typeInto(page, "#limit-2-min", "")
	typeInto(page, "#limit-2-max", "100")
	page.WaitTrue(`document.querySelector("#cannot .warning")?.textContent.includes("Tie rod length at most 100.00")`)
	page.Shot("find cannot")
	click(page, "#nearest-0")
	page.WaitTrue(`document.querySelector(".strip [aria-pressed=true]").textContent.includes("nearest")`)
	typeInto(page, "#limit-2-max", "900")
	page.WaitTrue(`document.querySelector("#cannot")?.textContent.includes("All limits can be held together")`)
}

// TestSetUpOfSeveralSettings adds a set-up of caster, ride height and dive at once, types
// another caster and adds a column: each stands in the one row.
func TestSetUpOfSeveralSettings(t *testing.T) {
	page := openSheet(t, Options{})
	openPanel(page, "search")
	choose(page, "#add-setup", "all")
	typeInto(page, "#setup-0-caster", "5")
	choose(page, "#add-setting", "roll")
	typeInto(page, "#setup-0-roll", "1.5")
	page.WaitTrue(`["caster", "rideHeight", "heave", "roll"].map((key) => document.querySelector("#setup-0-" + key)?.value).join() === "5.000,−25.40,25.40,1.500"`)
	page.WaitTrue(`!!document.querySelector(".setups .now")?.textContent`)
	Eval[chromedp.Void](page, `void document.querySelector("#ask-setups").scrollIntoView()`)
	page.Shot("find set-up of several settings")
	openPanel(page, "map")
	if line := Eval[string](page, `document.querySelector("#ask-setups .ask-line").textContent`); !strings.Contains(line, "braking") {
		t.Errorf("the map says of the set-ups %q", line)
	}
}

// TestUsualTarget takes a usual target: it says where it comes from until its band is
// another.
func TestUsualTarget(t *testing.T) {
	page := openSheet(t, Options{})
	openPanel(page, "search")
	choose(page, "#preset", "manual")
	page.WaitTrue(`document.querySelector("#ask-target").textContent.includes("workshop manual of 1997") && document.querySelector("#band").value !== ""`)
	Eval[chromedp.Void](page, `void document.querySelector("#ask-target").scrollIntoView()`)
	page.Shot("find usual target")
	typeInto(page, "#band", "0.3")
	page.WaitTrue(`document.querySelector("#preset").value === "" && document.querySelector("#band").value === "0.300"`)
}

// TestBoundIsDragged drags a variable's upper bound on its bar: the field beside it follows, and
// one step of undo takes it back.
func TestBoundIsDragged(t *testing.T) {
	page := openSheet(t, Options{})
	openPanel(page, "search")
	const most = `parseFloat(document.querySelector("#max-tieRodOuterHeight").value)`
	before := Eval[float64](page, most)
	bar := middle(page, ".frees .bar")
	end := Eval[float64](page, `document.querySelector(".frees .ends").getBoundingClientRect().right`)
	from := place{X: end - 1, Y: bar.Y}
	press(page, from)
	moveTo(page, from.by(-6, 0))
	lift(page, from.by(-6, 0))
	page.WaitTrue(fmt.Sprintf("%s < %g", most, before))
	pressControl(page, "z")
	page.WaitTrue(fmt.Sprintf("%s === %g", most, before))
}

// TestFootCoversNoField gives the keyboard to every field of the question, with an answer at
// the foot: none that has it lies under the foot.
func TestFootCoversNoField(t *testing.T) {
	page := openSheet(t, Options{Width: 1024, Height: 768})
	openPanel(page, "search")
	click(page, "#more-steeringArmLength")
	click(page, `button[aria-label^="Let steering arm length"]`)
	page.WaitTrue(`!document.querySelector("#more-steeringArmLength")`)
	click(page, "#find")
	page.WaitTrue(`!!document.querySelector("#answer")`)
	for _, o := range []Options{{Width: 1024, Height: 768}, {Width: 1440, Height: 900}} {
		page.resize(o)
		for _, under := range Eval[[]string](page, `[...document.querySelectorAll(".question :is(input, select, button)")].filter((e) => e.checkVisibility() && !e.closest("details:not([open])")).map((e) => {
			document.querySelector(".panels").scrollTop = 0;
			e.focus();
			const r = e.getBoundingClientRect();
			const at = document.elementFromPoint(r.x + r.width / 2, r.y + r.height / 2);
			return at?.closest(".result") ? e.tagName + "#" + e.id : "";
		}).filter(Boolean)`) {
			t.Errorf("%d px: %s has the keyboard under the foot", o.Width, under)
		}
	}
}
