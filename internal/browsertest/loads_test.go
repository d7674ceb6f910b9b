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

// TestStiffnessIsEntered states how stiff all is that gives: what is no stiffness is refused in
// words; with the last one stated Compare has the toe that the load cases make.
func TestStiffnessIsEntered(t *testing.T) {
	page := openSheet(t, Options{})
	openPanel(page, "car")
	page.WaitTrue(`!!document.querySelector("#stiffness")`)
	click(page, "#stiffness summary")
	const row = `[...document.querySelectorAll("th")].some((e) => e.textContent.includes("Compliance steer"))`
	fields := Eval[[]string](page, `[...document.querySelectorAll("#stiffness input")].map((e) => "#" + e.id)`)
	if len(fields) != 6 {
		t.Fatalf("fields %v, want four pivots, tie rod and gear", fields)
	}
	typeInto(page, fields[0], "-3")
	page.WaitTrue(`document.querySelector("` + fields[0] + `-problem")?.textContent.includes("above 0")`)
	for i, field := range fields {
		if i == len(fields)-1 {
			openPanel(page, "compare")
			if Eval[bool](page, row) {
				t.Error("a figure without all that it needs")
			}
			openPanel(page, "car")
		}
		typeInto(page, field, "8000")
		page.WaitTrue(`document.querySelector("` + field + `").value === "8000" && !document.querySelector("` + field + `-problem")`)
	}
	Eval[any](page, `document.querySelector("#stiffness").scrollIntoView()`)
	page.Shot("stiffness")
	openPanel(page, "compare")
	page.WaitTrue(row)
	page.Shot("compliance")
	Eval[any](page, `[...document.querySelectorAll("th")].find((e) => e.textContent.includes("Compliance steer")).scrollIntoView({block: "center"})`)
	page.Shot("compliance-row")
	page.resize(Options{Width: 390, Height: 844, Touch: true, Dark: true})
	openPanel(page, "car")
	Eval[any](page, `document.querySelector("#stiffness").scrollIntoView()`)
	page.Shot("stiffness-phone")
	openPanel(page, "compare")
	Eval[any](page, `[...document.querySelectorAll("th")].find((e) => e.textContent.includes("Compliance steer")).scrollIntoView({block: "center"})`)
	page.Shot("compliance-phone")
}
