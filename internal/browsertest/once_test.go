package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// openAll opens all that can be opened in the panel that is shown.
const openAll = `(async () => {
	const pause = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
	for (let round = 0; round < 4; round++) {
		document.querySelectorAll("#panel details:not(.explain), .menu-box details:not(.explain)").forEach((d) => d.open = true);
		for (const b of document.querySelectorAll("#panel .small[aria-expanded=false], #panel .turner[aria-expanded=false]")) {
			b.click();
			await pause();
		}
		await pause();
	}
})()`

// refusals types into every field that is shown what it may refuse, one after the other, and
// undoes what is taken. It returns how many fields refused something, and each text that stands
// on the page more than once or in the bottom line alone while its field is refused.
const refusals = `(async (within) => {
	const until = async (what) => {
		for (let i = 0; i < 120 && !what(); i++) await new Promise((done) => requestAnimationFrame(done));
	};
	const message = () => document.querySelector("#message").textContent.trim();
	const undoTitle = () => document.querySelector("#undo").title;
	const texts = ["?!", "-1", "1e9"];
	const problem = (id) => document.getElementById(id + "-problem");
	const put = (input, text) => {
		input.value = text;
		input.dispatchEvent(new InputEvent("input", {bubbles: true}));
		input.dispatchEvent(new Event("change", {bubbles: true}));
	};
	let refused = 0;
	const faults = [];
	const ids = [...document.querySelectorAll(within)].flatMap((e) => [...e.querySelectorAll(".field input[type=text]")]).filter((e) => e.checkVisibility() && !e.disabled).map((e) => e.id);
	for (const id of ids) {
		let any = false;
		const stood = document.getElementById(id)?.value;
		for (const text of texts) {
			const input = document.getElementById(id);
			if (!input) break;
			const said = message(), undo = undoTitle();
			put(input, text);
			await until(() => problem(id) || undoTitle() !== undo || message() !== said);
			const told = problem(id)?.textContent.trim();
			if (told) {
				any = true;
				if (/[a-z][A-Z]|[a-z]\.[a-z0-9]/.test(told.replace(/"[^"]*"/g, ""))) faults.push(id + ": told in the words of the file: " + told);
				const where = [...document.querySelectorAll("body *")].filter((e) => e.checkVisibility() && e.children.length === 0 && e.textContent.includes(told));
				if (where.length !== 1) faults.push(id + ", " + JSON.stringify(text) + ": told " + where.length + " times: " + told);
				if (message() !== said && message().includes(told)) faults.push(id + ", " + JSON.stringify(text) + ": the bottom line has it too: " + told);
			} else if (message() !== said && undoTitle() === undo && !message().startsWith("Undone") && document.getElementById(id)?.value === text && text !== stood) {
				faults.push(id + ", " + JSON.stringify(text) + ": the bottom line alone has it: " + message());
			}
			if (told) {
				put(document.getElementById(id), stood);
				await until(() => !problem(id));
				if (problem(id)) faults.push(id + ": what stood there is refused: " + JSON.stringify(stood));
			}
			if (undoTitle() !== undo) {
				document.querySelector("#undo").click();
				await until(() => undoTitle() === undo);
			}
		}
		if (any) refused++;
	}
	return {refused, fields: ids.length, faults};
})(%s)`

// TestWhatIsRefusedIsToldOnce types into every field of every panel what it may refuse: the
// reason stands beside the field and nowhere else, in words that no file has.
func TestWhatIsRefusedIsToldOnce(t *testing.T) {
	type outcome struct {
		Refused, Fields int
		Faults          []string
	}
	refused := 0
	for key, within := range map[string]string{
		"points": "#panel", "tape": "#panel", "readings": "#panel", "search": "#panel", "map": ".way > :not(.question)", "tradeoff": ".way > :not(.question)", "parts": ".way > :not(.question)",
		"compare": "#panel", "sheet": "#panel", "series": "#panel", "study": "#study-menu-box", "units": "#units-box",
	} {
		t.Run(key, func(t *testing.T) {
			page := openSheet(t, Options{})
			if key == "units" {
				click(page, "#units")
				page.WaitTrue(`!!document.querySelector("#units-box")`)
			} else {
				openPanel(page, key)
			}
			waitFrame(page)
			Eval[chromedp.Void](page, openAll)
			got := Evalf[outcome](page, refusals, quote(within))
			t.Logf("%d of %d fields refuse something", got.Refused, got.Fields)
			refused += got.Refused
			for _, fault := range got.Faults {
				t.Error(fault)
			}
		})
	}
	if refused < 60 {
		t.Errorf("only %d fields refused anything", refused)
	}
}
