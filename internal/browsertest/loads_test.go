package browsertest

import (
	"fmt"
	"testing"
)

// TestLoadsAreEntered adds a usual load case with a number of one's own and sets its travel: what
// is no number is refused in words, stays in its field and reaches no study.
func TestLoadsAreEntered(t *testing.T) {
	page := openSheet(t, Options{})
	openPanel(page, "car")
	const cases = `document.querySelectorAll("#loads .load-case").length`
	page.WaitTrue(`!!document.querySelector("#loads")`)
	was := Eval[int](page, cases)
	refused := func(field string) {
		t.Helper()
		for _, text := range []string{"nan", "1e999", "inf", "kerb"} {
			typeInto(page, field, text)
			page.WaitTrue(`document.querySelector("` + field + `-problem")?.textContent.includes("is not a number")`)
			page.WaitTrue(`document.querySelector("` + field + `").value === ` + quote(text))
		}
	}
	choose(page, "#add-load", "kerb")
	page.WaitTrue(`!!document.querySelector("#preset-0")`)
	refused("#preset-0")
	typeInto(page, "#preset-0", "60")
	page.WaitTrue(`!document.querySelector("#preset-0-problem")`)
	click(page, "#add-preset")
	page.WaitTrue(fmt.Sprintf(`%s === %d`, cases, was+1))
	page.WaitTrue(`document.querySelector("#loads").textContent.includes("kerb's height H 60 mm")`)
	travel := fmt.Sprintf("#load-%d-travel", was)
	refused(travel)
	typeInto(page, travel, "-12,5")
	page.WaitTrue(`document.querySelector("` + travel + `").value === "-12.5" && !document.querySelector("` + travel + `-problem")`)
	page.Shot("loads")
}
