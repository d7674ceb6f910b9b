package browsertest

import "testing"

// crowded lists what touches: controls that stand less than 4 px off one another, or off a rule
// that parts what is above it from what is below. Segments, keys and rows of a list belong
// together and may.
const crowded = `(() => {
	const together = ".segments, .picker-list, .pad-keys, .strip, .steps, .cells, .palette, .drawing, .compare-table, .runs, .run-rows";
	const seen = (e) => e.checkVisibility({visibilityProperty: true}) && !e.closest(".unseen") && e.getBoundingClientRect().width > 1;
	const name = (e) => e.tagName.toLowerCase() + (e.id ? "#" + e.id : "") + (e.getAttribute("class") ? "." + e.getAttribute("class").trim().replaceAll(" ", ".") : "") + " " + JSON.stringify(e.textContent.trim().slice(0, 24));
	const shown = (e) => {
		const r = e.getBoundingClientRect();
		for (let a = e.parentElement; a; a = a.parentElement) {
			if (/auto|scroll|hidden/.test(getComputedStyle(a).overflow)) {
				const b = a.getBoundingClientRect();
				if (r.bottom > b.bottom + 0.5 || r.top < b.top - 0.5) return false;
			}
		}
		return true;
	};
	const panel = document.querySelector("#panel");
	const out = [];
	const own = (e) => {
		const style = getComputedStyle(e);
		return ["top", "right", "bottom", "left"].some((s) => parseFloat(style["border-" + s + "-width"]) && style["border-" + s + "-color"] !== "rgba(0, 0, 0, 0)") || style.backgroundColor !== "rgba(0, 0, 0, 0)";
	};
	const controls = [...panel.querySelectorAll("button, select, input:not([type=radio], [type=checkbox], [type=range]), textarea, label.file")].filter((e) => seen(e) && own(e));
	const fixed = (e) => e.closest(".result, .pad, .compare-foot");
	for (const [i, a] of controls.entries()) {
		const r = a.getBoundingClientRect();
		for (const b of controls.slice(i + 1)) {
			if (a.closest(together) && a.closest(together) === b.closest(together) || fixed(a) !== fixed(b)) continue;
			const s = b.getBoundingClientRect();
			const across = Math.max(r.left, s.left) - Math.min(r.right, s.right), down = Math.max(r.top, s.top) - Math.min(r.bottom, s.bottom);
			if (across < -1 && down > -2 && down < 3.5 || down < -1 && across > -2 && across < 3.5) out.push(name(a) + " is " + Math.max(across, down).toFixed(1) + " px off " + name(b));
		}
	}
	const rules = [...panel.querySelectorAll("*")].filter((e) => seen(e) && !e.matches("button, select, input, textarea, label, svg *, tr, th, td, option"));
	for (const e of rules) {
		const style = getComputedStyle(e), r = e.getBoundingClientRect();
		for (const side of ["top", "bottom"]) {
			if (!parseFloat(style["border-" + side + "-width"]) || style["border-" + side + "-style"] === "none" || style["border-" + side + "-color"] === "rgba(0, 0, 0, 0)") continue;
			for (const c of controls) {
				const s = c.getBoundingClientRect();
				if (Math.min(r.right, s.right) - Math.max(r.left, s.left) < 10 || fixed(c) !== fixed(e) || c.closest(".segments") === e) continue;
				const off = Math.min(Math.abs(s.bottom - r[side]), Math.abs(s.top - r[side]));
				if (off < 3.5) out.push(name(c) + " is " + off.toFixed(1) + " px off the rule of " + name(e));
			}
		}
	}
	return out;
})()`

// TestNothingIsCrowded looks at every step and way, with all that can be opened, at every size.
func TestNothingIsCrowded(t *testing.T) {
	for _, sizes := range [][]Options{screens[:2], screens[2:]} {
		page := openSheet(t, sizes[0])
		everyPanel(page, sizes, func(width int64, key string) {
			for _, fault := range Eval[[]string](page, crowded) {
				t.Errorf("%d px, %s: %s", width, key, fault)
			}
		})
	}
}

// everyPanel opens each step and way at each size, and does something there.
func everyPanel(p *Page, sizes []Options, do func(width int64, key string)) {
	p.t.Helper()
	for _, o := range sizes {
		p.resize(o)
		for _, panel := range panels {
			if panel.key == "study" {
				continue
			}
			openPanel(p, panel.key)
			waitFrame(p)
			do(o.Width, panel.key)
		}
	}
}
