package browsertest

import "testing"

// smallTargets lists what can be pressed on the page as it stands and is lower than a
// finger, 44 px. Words within a text that explain themselves are left out, as is what a
// label of that height stands for.
const smallTargets = `[...document.querySelectorAll("button, select, input, summary, textarea, label.file")]
	.filter((e) => !e.closest(".unseen, .explain") && e.checkVisibility() && !["radio", "checkbox"].includes(e.type))
	.concat([...document.querySelectorAll(".choice label")])
	.map((e) => [e, e.getBoundingClientRect().height])
	.filter(([, height]) => height > 0 && height < 43.9)
	.map(([e, height]) => e.tagName + " " + (e.id || e.className || e.textContent) + ": " + height.toFixed(1) + " px")`

// TestTouchTargets measures what a finger presses on a phone, in every panel.
func TestTouchTargets(t *testing.T) {
	page := openSheet(t, Options{Width: 360, Height: 740, Touch: true})
	click(page, "#view")
	for _, panel := range panels {
		openPanel(page, panel.key)
		for _, small := range Eval[[]string](page, smallTargets) {
			t.Errorf("%s: %s", panel.key, small)
		}
		if by := Eval[float64](page, `document.documentElement.scrollWidth - innerWidth`); by > 0 {
			t.Errorf("%s is %g px wider than the phone", panel.key, by)
		}
		page.Shot("touch " + panel.key)
	}
}
