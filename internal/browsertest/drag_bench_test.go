package browsertest

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/performance"
	"github.com/chromedp/chromedp"

	"toewright/app/model"
)

// dragSeconds is how long one round of the benchmark drags.
const dragSeconds = 5

// dragFrames is a script that drags about a place for some seconds, one move of the
// pointer for each frame of the screen. For each it takes the time in ms that the page is
// at work: in the pointer's handler, and in what it has the next frame do. It counts the
// frames of a screen of 60 Hz that passed without one of ours. With a reach of 0 nothing
// is moved: what is dropped then is the machine's doing.
const dragFrames = `(async (x, y, reach, seconds) => {
	const picture = document.querySelector("#picture"), times = [], period = 1000 / 60;
	const ask = window.requestAnimationFrame.bind(window);
	let work = 0, dropped = 0, last = 0;
	const timed = (f) => {
		const at = performance.now();
		f();
		work += performance.now() - at;
	};
	window.requestAnimationFrame = (f) => ask((now) => timed(() => f(now)));
	for (const end = performance.now() + 1000 * seconds; performance.now() < end;) {
		const angle = performance.now() / 300;
		if (reach) timed(() => picture.dispatchEvent(new PointerEvent("pointermove", {
			clientX: x + reach / 10 * Math.sin(1.4 * angle), clientY: y + reach * Math.sin(angle), pointerId: 1, bubbles: true, buttons: 1,
		})));
		const now = await new Promise(ask); // behind the page's own, which it asked for before
		times.push(work);
		work = 0;
		if (last) dropped += Math.max(0, Math.round((now - last) / period) - 1);
		last = now;
	}
	window.requestAnimationFrame = ask;
	return { times, dropped };
})(%g, %g, %d, %d)`

// dragged is what one round came to.
type dragged struct {
	Times   []float64 // ms, of each frame, ascending once it is done
	Dropped int       // frames of the screen
	cpu     float64   // ms, of the page's thread in a frame
}

// part returns the time that a part of the frames does not exceed.
func (d *dragged) part(p float64) float64 { return d.Times[int(p*float64(len(d.Times)-1))] }

// duplicate is a script that duplicates the selected car.
const duplicate = `(([...document.querySelectorAll("#selected-car button")].find((b) => b.textContent === "Duplicate")).click(), true)`

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

// dragReach is how far the pointer goes up and down, in CSS pixels.
const dragReach = 60

// explained is a script that says whether why the car's toe changes stands under the drawing.
const explained = `!!document.querySelector("#why:not(.stale)")`

// dragRound drags the ball that is held for a round, as far as a reach.
func dragRound(p *Page, at place, reach int) dragged {
	p.t.Helper()
	before := processorTime(p)
	d := Eval[dragged](p, fmt.Sprintf(dragFrames, at.X, at.Y, reach, dragSeconds))
	d.cpu = (processorTime(p) - before) / float64(len(d.Times))
	slices.Sort(d.Times)
	return d
}

// openFull opens the sheet with as many candidates as there can be, on a processor
// slowed down by a factor, ready to measure.
func openFull(b *testing.B, slower float64) *Page {
	b.Helper()
	page := openSheet(b, Options{})
	openPanel(page, "compare")
	for i := 5; i <= model.MaxCandidates; i++ {
		Eval[bool](page, duplicate)
		page.WaitTrue(fmt.Sprintf(`!!document.querySelector("#car-%d.selected")`, i))
	}
	openPanel(page, "find")
	page.WaitTrue(explained)
	page.Do(chromedp.Func(func(ctx context.Context, tab *chromedp.Target) error {
		_, err := chromedp.Call(ctx, performance.Enable, performance.EnableParams{TimeDomain: performance.EnableTimeDomainThreadTicks})
		return err
	}))
	throttle(page, slower)
	return page
}

// BenchmarkDrag drags the outer ball of the steering arm with as many candidates as
// there can be, round after round of five seconds, and prints a table of the rounds. The
// metrics are those of the round with the least p95, as whatever else the machine does
// only adds.
func BenchmarkDrag(b *testing.B) {
	for _, slower := range []float64{1, 4} {
		b.Run(fmt.Sprintf("processor-%gx-slower", slower), func(b *testing.B) {
			page := openFull(b, slower)
			at := middle(page, outerBall)
			page.WaitTrue(fmt.Sprintf(`!!document.elementFromPoint(%g, %g).closest("#picture")`, at.X, at.Y)) // nothing lies over it
			press(page, at)
			defer lift(page, at)
			before := value(b, page, outerBall)
			dragRound(page, at, dragReach) // until the browser has compiled what it runs often
			if value(b, page, outerBall) == before {
				b.Fatal("the pointer drags no ball")
			}
			rest := dragRound(page, at, 0)
			var rounds []dragged
			for b.Loop() {
				rounds = append(rounds, dragRound(page, at, dragReach))
			}
			fmt.Printf("\n%s\nWith nothing moved %d of %d frames are dropped.\n\n", dragTable(rounds), rest.Dropped, rest.Dropped+len(rest.Times))
			best := slices.MinFunc(rounds, func(x, y dragged) int { return int(1e3 * (x.part(0.95) - y.part(0.95))) })
			b.ReportMetric(best.part(0.5), "p50-ms")
			b.ReportMetric(best.part(0.95), "p95-ms")
			b.ReportMetric(best.part(1), "max-ms")
			b.ReportMetric(float64(best.Dropped), "dropped")
			b.ReportMetric(best.cpu, "cpu-ms/frame")
		})
	}
}

// dragTable writes the rounds as a table.
func dragTable(rounds []dragged) string {
	var out strings.Builder
	out.WriteString("| frames | p50, ms | p95, ms | max, ms | dropped | thread, ms a frame |\n| --- | --- | --- | --- | --- | --- |\n")
	for i := range rounds {
		d := &rounds[i]
		fmt.Fprintf(&out, "| %d | %.1f | %.1f | %.1f | %d | %.1f |\n", len(d.Times), d.part(0.5), d.part(0.95), d.part(1), d.Dropped, d.cpu)
	}
	return out.String()
}
