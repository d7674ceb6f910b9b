package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// says is whether an element has a text in it.
func says(selector, text string) string {
	return `(document.querySelector(` + quote(selector) + `)?.textContent ?? "").includes(` + quote(text) + `)`
}

// TestNewStudySaysWhatIsItsOwn starts from a template on a desk and on a phone in the dark:
// every number is marked until it is typed or kept, a reload changes nothing in that, and
// none of the invented car's readings, parts and tolerances come along.
func TestNewStudySaysWhatIsItsOwn(t *testing.T) {
	for name, o := range map[string]Options{"desk": {}, "phone": {Width: 390, Height: 844, Touch: true, Dark: true}} {
		t.Run(name, func(t *testing.T) {
			page := Open(t, o)
			page.WaitOfflineReady()
			inView := func(selector string) {
				Eval[chromedp.Void](page, `void document.querySelector(`+quote(selector)+`).scrollIntoView({block: "center"})`)
			}
			openPanel(page, "study")
			click(page, "#new-study")
			click(page, "#template-strut-rack")
			openPanel(page, "car")
			page.WaitTrue(says("#borrowed", "Invented example"))
			page.WaitTrue(says(".title-block", "make no part by it"))
			const point, keep = "#point-strutLowerleft-x", "#keep-left-strutLower"
			const from = `document.querySelector("` + point + `").closest("tr").querySelector(".from").textContent`
			page.WaitTrue(from + ` === "template"`)
			page.Shot("new study " + name)

			typeCell(page, point, "-11")
			page.WaitTrue(from + ` === "template y, z"`)
			page.WaitTrue(says("#borrowed", "numbers that the toe curve depends on are a template's"))
			Eval[chromedp.Void](page, `void document.querySelector("`+point+`").focus()`)
			page.Shot("point typed over " + name)
			click(page, keep)
			page.WaitTrue(from + ` === "typed" && !document.querySelector("` + keep + `")`)
			page.WaitTrue(`document.querySelector("#kept").textContent === "saved"`)
			page.Reload()
			openPanel(page, "car")
			page.WaitTrue(`!!document.querySelector("` + point + `") && ` + from + ` === "typed"`)
			page.WaitTrue(says("#borrowed", "make no part by it") + ` || ` + says("#borrowed", "Make no part by it"))
			inView("#car-values")
			page.Shot("values of the car " + name)

			// The tolerances come last, to be filled.
			for _, p := range []struct{ panel, empty string }{{"readings", "No readings yet"}, {"parts", "Nothing yet"}, {"series", "None yet"}} {
				openPanel(page, p.panel)
				page.WaitTrue(says(".panel", p.empty))
			}
			click(page, "#usual-tolerances")
			page.WaitTrue(says(".panel", "yours."))
			page.WaitTrue(`document.querySelectorAll(".panel .tolerances .tag").length >= 3`)
			page.Shot("usual tolerances " + name)
			click(page, "#take-out-tolerances")
			page.WaitTrue(says(".panel", "None yet"))
		})
	}
}

// TestPanelsSayWhoseCar fits the demo's car to its readings, taken for one's own, and looks at what the search, the map, the parts to buy and the
// series say of it, until one press makes the fitted car theirs.
func TestPanelsSayWhoseCar(t *testing.T) {
	page := Open(t, Options{})
	page.WaitText("#solver", "ready")
	openPanel(page, "readings")
	click(page, "#keep-readings") // or the fit is one of invented readings
	work(page, "readings", "#fit", "#fitted")
	for _, tab := range []string{"search", "map", "series", "parts"} {
		openPanel(page, tab)
		page.WaitTrue(says("#fit-use", "not of the one that fits your readings") + ` && !!document.querySelector("#use-fit")`)
	}
	page.Shot("parts before the fit is taken")
	click(page, "#use-fit")
	page.WaitTrue(says("#fit-use", "of the car as fitted to the readings") + ` && !document.querySelector("#use-fit")`)
	openPanel(page, "car")
	page.WaitTrue(`!!document.querySelector(".from-fitted")`)
	page.Shot("fitted points")
}
