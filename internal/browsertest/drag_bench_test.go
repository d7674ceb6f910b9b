package browsertest

import (
	"fmt"
	"slices"
	"testing"

	"toewright/app/model"
)

// benchFrames is how many frames one round of the benchmark drags through.
const benchFrames = 200

// dragFrames is a script that moves the pointer about a place, frame after frame, and
// returns for each the time in ms that the page took from the event to the end of its
// own work in the frame that follows. The frames asked for before and after the event
// stand before and behind the page's own.
const dragFrames = `(async (x, y, frames) => {
	const picture = document.querySelector("#picture"), times = [];
	for (let i = 0; i < frames; i++) {
		times.push(await new Promise((done) => {
			let begun;
			requestAnimationFrame(() => { begun = performance.now(); });
			const at = performance.now();
			picture.dispatchEvent(new PointerEvent("pointermove", {
				clientX: x + 6 * Math.sin(i / 5), clientY: y + 14 * Math.sin(i / 7), pointerId: 1, bubbles: true, buttons: 1,
			}));
			const handled = performance.now() - at;
			requestAnimationFrame(() => done(handled + performance.now() - begun));
		}));
	}
	return times;
})(%g, %g, %d)`

// duplicate is a script that duplicates the selected car.
const duplicate = `(([...document.querySelectorAll(".card.selected button")].find((b) => b.textContent === "Duplicate")).click(), true)`

// BenchmarkDrag drags the outer ball of the steering arm with as many candidates as
// there can be.
func BenchmarkDrag(b *testing.B) {
	page := openSheet(b, Options{})
	for i := 5; i <= model.MaxCandidates; i++ {
		Eval[bool](page, duplicate)
		page.WaitTrue(fmt.Sprintf(`!!document.querySelector("#car-%d.selected")`, i))
	}
	at := middle(page, outerBall)
	press(page, at)
	defer lift(page, at)
	var times []float64
	for b.Loop() {
		times = append(times, Eval[[]float64](page, fmt.Sprintf(dragFrames, at.X, at.Y, benchFrames))...)
	}
	slices.Sort(times)
	b.ReportMetric(times[len(times)/2], "p50-ms/frame")
	b.ReportMetric(times[len(times)*95/100], "p95-ms/frame")
	b.ReportMetric(times[len(times)-1], "max-ms/frame")
}
