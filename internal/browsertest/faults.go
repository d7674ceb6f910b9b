package browsertest

// Overflow is an expression that lists what of the open panel ends beyond it, and by how many
// CSS pixels, and says so of the document. What scrolls within itself does not count.
const Overflow = `(() => {
	const edge = document.querySelector("#panel").getBoundingClientRect().right;
	const scrolls = (e) => e.id !== "panel" && (getComputedStyle(e).overflowX !== "visible" || scrolls(e.parentElement));
	const wide = [...document.querySelectorAll("#panel *")]
		.filter((e) => !e.closest(".unseen, .explain") && !scrolls(e.parentElement))
		.map((e) => [e, e.getBoundingClientRect()])
		.filter(([, r]) => r.width && r.right > edge + 0.5)
		.map(([e, r]) => e.tagName + "#" + e.id + "." + (e.getAttribute("class") ?? "") + " by " + Math.round(r.right - edge));
	const by = document.documentElement.scrollWidth - innerWidth;
	return by > 0 ? ["the document by " + by, ...wide] : wide;
})()`

// Findings is an expression that runs the checker of accessibility, axe-core, over the page as
// it stands and lists all that it finds wrong, however slight: the rule, the element and the
// reason. Nothing is fetched.
const Findings = `axe.run(document, {preload: false, resultTypes: ["violations"]}).then(r => r.violations
	.flatMap(v => v.nodes.map(n => v.id + " (" + v.impact + "): " + n.target.join(" ") + ": " + n.failureSummary.split("\n").slice(1).join(";"))))`
