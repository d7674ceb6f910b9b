package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// TestLateArrivalsTakeNothing has the offer of another tab's study come while a number is being
// typed: the field is the same one afterwards, with what is typed in it and the focus on it.
func TestLateArrivalsTakeNothing(t *testing.T) {
	for name, o := range map[string]Options{"desk": {}, "phone": {Width: 390, Height: 844, Touch: true}} {
		t.Run(name, func(t *testing.T) {
			const field = "#selected-car .slider input"
			first := Open(t, o)
			openPanel(first, "compare")
			typeInto(first, field, "-11")
			first.WaitTrue(`document.querySelector("#kept").textContent === "saved"`)
			second := first.SecondTab(o)
			second.WaitTrue(sliderValue + ` === "−11.00"`)

			Eval[chromedp.Void](first, `(() => {
				window.typedIn = document.querySelector(`+quote(field)+`);
				window.typedIn.focus();
				window.typedIn.select();
			})()`)
			keys(first, "-4")
			typeInto(second, field, "-7")
			second.WaitTrue(`document.querySelector("#kept").textContent === "saved"`)
			first.WaitTrue(`!!document.querySelector("#theirs")`)
			if !Eval[bool](first, `document.activeElement === window.typedIn && window.typedIn.value === "-4"`) {
				t.Errorf("what was being typed is %q, and the focus is on %s",
					Eval[string](first, `document.querySelector(`+quote(field)+`).value`), Eval[string](first, `document.activeElement.outerHTML.slice(0, 80)`))
			}
		})
	}
}

// TestPressesAreTaken presses words of a group one right after another, while the page is still
// drawing what came of the last: the one that was pressed last holds, and is marked.
func TestPressesAreTaken(t *testing.T) {
	page := Open(t, Options{})
	openPanel(page, "search")
	for _, last := range []string{"2", "3", "1"} {
		Eval[chromedp.Void](page, `(() => {
			for (const word of ["0", "1", "3", "2", "0", `+quote(last)+`]) document.getElementById("target-" + word).click();
		})()`)
		shown := map[string]string{"1": "#slope", "2": ".points", "3": "#target-car"}[last]
		page.WaitTrue(`!!document.querySelector("#panel ` + shown + `") && document.getElementById("target-" + ` + quote(last) + `).checked`)
	}
}
