package browsertest

import "testing"

// fourThreads has the browser say that the machine has four, so that the page has three
// workers.
const fourThreads = `Object.defineProperty(Navigator.prototype, "hardwareConcurrency", { get: () => 4 });` + countWorkers

// countWorkers counts the workers that are started.
const countWorkers = `window.started = 0; const Before = Worker; window.Worker = function (...of) { window.started++; return new Before(...of); };`

// TestAllWorkersSearch divides a search among three workers: while it runs the curve of the
// best so far stands on the chart, and a search that is stopped keeps its best.
func TestAllWorkersSearch(t *testing.T) {
	page := openSheet(t, Options{Before: fourThreads})
	openPanel(page, "search")
	for range 4 { // so that there is time to stop it
		click(page, "#free")
		click(page, ".picker-list button")
		page.WaitTrue(`!!document.querySelector("#free")`)
	}
	click(page, "#find")
	page.WaitTrue(`[...document.querySelectorAll("#picture .tried")].some((p) => p.getAttribute("d")) && document.querySelector("#picture").textContent.includes("best so far")`)
	if n := Eval[int](page, `window.started`); n != 3 {
		t.Errorf("%d workers, want 3", n)
	}
	click(page, "#find-stop")
	page.WaitTrue(`!!document.querySelector("#answer")`)
	page.WaitTrue(`[...document.querySelectorAll("#picture .tried")].every((p) => !p.getAttribute("d"))`)
}
