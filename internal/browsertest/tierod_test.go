package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// onSelected is whether a line of the limits on the selected card has all texts.
func onSelected(texts ...string) string {
	every := "true"
	for _, text := range texts {
		every += ` && e.textContent.includes(` + quote(text) + `)`
	}
	return `[...document.querySelectorAll("#selected-car .limits li")].some((e) => ` + every + `)`
}

// TestEngagementIsTyped takes the engagement out of My car: the limit on it says on the
// candidate's card that it cannot be measured, and why, while the others stand. Typed in
// again, in another unit, it is judged. On a desk in the light, on a phone in the dark.
func TestEngagementIsTyped(t *testing.T) {
	const thread, field = "Thread engaged in the adjuster", "#tie-rod-engagement"
	value := func(want string) string { return `document.querySelector("` + field + `")?.value === ` + quote(want) }
	for name, o := range map[string]Options{"desk": {}, "phone": {Width: 390, Height: 844, Touch: true, Dark: true}} {
		t.Run(name, func(t *testing.T) {
			page := Open(t, o)
			inView := func(selector string) {
				Eval[chromedp.Void](page, `void document.querySelector(`+quote(selector)+`).scrollIntoView({block: "center"})`)
			}
			openPanel(page, "search")
			openPart(page, "limits")
			choose(page, "#add-limit", "threadEngagement")
			typeInto(page, "#limit-2-min", "16")

			openPanel(page, "car")
			page.WaitTrue(value("24"))
			typeInto(page, field, "long")
			page.WaitTrue(`document.querySelector("` + field + `-problem")?.textContent.includes("is not a length")`)
			page.WaitTrue(value("long"))
			inView("#tie-rod")
			page.Shot("tie rod mistyped " + name)
			typeInto(page, field, "")
			page.WaitTrue(value("") + ` && !document.querySelector("` + field + `-problem")`)

			openPanel(page, "compare")
			page.WaitTrue(onSelected("? ", thread, "cannot be measured", "thread engagement is missing", "Car, Tie rod"))
			page.WaitTrue(onSelected("✓ ", "Outer ball", "to spare"))
			page.WaitTrue(`[...document.querySelectorAll("#cars th .warning")].some((e) => e.textContent.includes("thread engagement is missing"))`)
			inView("#selected-car .limits")
			page.Shot("limit without engagement " + name)

			openPanel(page, "car")
			typeInto(page, field, "3/4 in")
			page.WaitTrue(value("19.05"))
			typeInto(page, "#tie-rod-minEngagement", "20")
			page.WaitTrue(`document.querySelector("#doubts")?.textContent.includes("thread engagement: 19.05 mm is less than the least, 20")`)
			inView("#tie-rod")
			page.Shot("tie rod slip " + name)
			pressControl(page, "z")
			page.WaitTrue(`document.querySelector("#tie-rod-minEngagement").value === "16"`)
			typeInto(page, "#tie-rod-innerBall", "")
			page.WaitTrue(`document.querySelector("#message").textContent.includes("The axis that the file states for the joint goes")`)
			click(page, "#message-undo")
			page.WaitTrue(`document.querySelector("#tie-rod-innerBall").value === "30"`)
			click(page, "#tie-rod .explain summary")
			inView("#tie-rod")
			page.Shot("tie rod " + name)

			openPanel(page, "compare")
			page.WaitTrue(onSelected("✓ ", thread, " mm, at least 16.00 wanted", "to spare"))
			inView("#selected-car .limits")
			page.Shot("limit with engagement " + name)
		})
	}
}
