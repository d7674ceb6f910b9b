package browsertest

import "testing"

// moving is a promise of whether the wheels move within some frames.
const moving = `new Promise((done) => {
	const at = () => document.querySelector('` + leftMarker + `').getAttribute("aria-valuenow");
	const first = at();
	let frames = 20;
	const look = () => at() !== first ? done(true) : frames-- > 0 ? requestAnimationFrame(look) : done(false);
	requestAnimationFrame(look);
})`

// TestReaderWithoutMotion asks the system for less motion: Play moves the wheels by one
// place at each press, where it plays on for other readers.
func TestReaderWithoutMotion(t *testing.T) {
	for _, still := range []bool{false, true} {
		page := openSheet(t, Options{Still: still})
		if Eval[bool](page, moving) {
			t.Errorf("less motion %t: the wheels move before anything is pressed", still)
		}
		click(page, "#play")
		page.WaitTrue(`document.querySelector('` + leftMarker + `').getAttribute("aria-valuenow") !== "0.00"`)
		waitFrame(page)
		if got := Eval[bool](page, moving); got == still {
			t.Errorf("less motion %t: the wheels play on after a press: %t", still, got)
		}
		word := map[bool]string{false: "Stop", true: "Play"}[still]
		page.WaitText("#play", word)
		if !still {
			continue
		}
		place := value(t, page, leftMarker)
		click(page, "#play")
		waitFrame(page)
		if got := value(t, page, leftMarker); got == place {
			t.Errorf("travel after another press is still %g mm", got)
		}
		page.Shot("still")
	}
}

// moves lists the elements that a style sheet moves by itself.
const moves = `[...document.querySelectorAll("*")]
	.map((e) => [e, getComputedStyle(e)])
	.filter(([, s]) => s.transitionDuration.split(", ").some((d) => parseFloat(d) > 0) || s.animationName !== "none" || s.scrollBehavior !== "auto")
	.map(([e]) => e.tagName + " " + (e.id || e.className))
	.concat(document.getAnimations().map((a) => "animation of " + a.effect?.target?.id))`

// TestNothingMovesByStyle opens every panel for a reader without motion: no transition,
// no animation and no smooth scrolling stands in the way. The check itself is tried on
// a button that has one.
func TestNothingMovesByStyle(t *testing.T) {
	page := openSheet(t, Options{Still: true})
	for _, panel := range panels {
		openPanel(page, panel.key)
		for _, what := range Eval[[]string](page, moves) {
			t.Errorf("%s: %s moves", panel.key, what)
		}
	}
	Eval[bool](page, `(document.querySelector("#level").style.transitionDuration = "1s", true)`)
	if list := Eval[[]string](page, moves); len(list) == 0 {
		t.Error("a button with a transition was not found")
	}
}
