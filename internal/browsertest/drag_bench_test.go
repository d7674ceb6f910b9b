package browsertest

import (
	"context"
	"fmt"
	"slices"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/performance"
	"github.com/chromedp/chromedp"

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

// processorTime returns the time in ms that the page's thread has had of a processor, whatever
// else the machine does.
func processorTime(p *Page) float64 {
	p.t.Helper()
	metrics := Get(p, func(ctx context.Context, tab *chromedp.Target) (performance.GetMetricsResult, error) {
		return chromedp.Call(ctx, performance.GetMetrics, cdp.Empty{})
	})
	for _, m := range metrics.Metrics {
		if m.Name == "TaskDuration" {
			return m.Value * 1000
		}
	}
	p.t.Fatal("the browser does not say how long its tasks took")
	return 0
}

// BenchmarkDrag drags the outer ball of the steering arm with as many candidates as
// there can be. Percentiles are of the time by the clock, from the event to the end of
// the page's own work; cpu is the mean of all that the thread does in a frame, panels,
// layout and painting included.
func BenchmarkDrag(b *testing.B) {
	page := openSheet(b, Options{})
	for i := 5; i <= model.MaxCandidates; i++ {
		Eval[bool](page, duplicate)
		page.WaitTrue(fmt.Sprintf(`!!document.querySelector("#car-%d.selected")`, i))
	}
	page.Do(chromedp.Func(func(ctx context.Context, tab *chromedp.Target) error {
		_, err := chromedp.Call(ctx, performance.Enable, performance.EnableParams{TimeDomain: performance.EnableTimeDomainThreadTicks})
		return err
	}))
	at := middle(page, outerBall)
	press(page, at)
	defer lift(page, at)
	var times []float64
	before := processorTime(page)
	for b.Loop() {
		times = append(times, Eval[[]float64](page, fmt.Sprintf(dragFrames, at.X, at.Y, benchFrames))...)
	}
	b.ReportMetric((processorTime(page)-before)/float64(len(times)), "cpu-ms/frame")
	slices.Sort(times)
	b.ReportMetric(times[len(times)/2], "p50-ms/frame")
	b.ReportMetric(times[len(times)*95/100], "p95-ms/frame")
	b.ReportMetric(times[len(times)-1], "max-ms/frame")
}
