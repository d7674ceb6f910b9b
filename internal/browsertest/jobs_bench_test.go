package browsertest

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// watchTasks is a script that notes how long the longest task of the page's thread was. The
// browser tells of those over 50 ms.
const watchTasks = `window.longest = 0;
	new PerformanceObserver((list) => { for (const e of list.getEntries()) window.longest = Math.max(window.longest, e.duration); }).observe({type: "longtask"});`

// waitedFor are the jobs of the page that take long: the way, what starts the work in it and
// what shows that it is done.
var waitedFor = []struct{ name, way, work, done string }{
	{"search", "search", "#find", `!!document.querySelector("#answer")`},
	{"map", "map", "", mapIsFull},
	{"trade-off of nine designs", "tradeoff", "#trade", `!!document.querySelector("#take-design")  && !document.querySelector("#trade-stop")`},
	{"parts to buy", "parts", "#choose", `!!document.querySelector("#choices")`},
	{"series of 20,000 cars", "series", "#forge", `!!document.querySelector("#series")`},
}

// BenchmarkJobs does each job of the page that takes long on the demo, on a page's thread as it
// is and slowed down, and prints how long it took and how long the thread's longest task was.
// Workers are not slowed down.
func BenchmarkJobs(b *testing.B) {
	rates := []float64{1, 4, 6}
	var table strings.Builder
	table.WriteString("| Job | 1x, s | longest task, ms | 4x, s | longest task, ms | 6x, s | longest task, ms |\n| --- | --- | --- | --- | --- | --- | --- |\n")
	pages := make([]*Page, len(rates))
	for i, rate := range rates {
		pages[i] = openSheet(b, Options{Before: watchTasks})
		throttle(pages[i], rate)
	}
	for _, job := range waitedFor {
		fmt.Fprintf(&table, "| %s |", job.name)
		for i := range rates {
			took, longest := pages[i].time(job.way, job.work, job.done)
			most := "50 or less"
			if longest > 0 {
				most = fmt.Sprintf("%.0f", longest)
			}
			fmt.Fprintf(&table, " %.1f | %s |", took/1000, most)
			b.ReportMetric(longest, strings.ReplaceAll(job.name, " ", "-")+fmt.Sprintf("-%gx-ms", rates[i]))
		}
		table.WriteString("\n")
	}
	b.Log("\n" + table.String())
}

// throttle makes a page's thread slower by a rate.
func throttle(p *Page, rate float64) {
	p.Do(chromedp.Func(func(ctx context.Context, tab *chromedp.Target) error {
		_, err := chromedp.Call(ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: rate})
		return err
	}))
}

// time opens a way, has its work done and returns how long that took and how long the longest
// task of the page's thread was on the way, ms; 0 where none was over 50 ms.
func (p *Page) time(way, work, done string) (took, longest float64) {
	p.t.Helper()
	Eval[chromedp.Void](p, `void (window.longest = 0, window.began = performance.now())`)
	openPanel(p, way)
	if work != "" {
		Eval[chromedp.Void](p, `void (window.began = performance.now())`)
		click(p, work)
	}
	p.WaitTrue(done)
	took = Eval[float64](p, `performance.now() - window.began`)
	waitFrame(p)
	return took, Eval[float64](p, `window.longest`)
}
