package browsertest

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/network"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"toewright/internal/web"
)

// started is a page whose start is measured.
type started struct {
	name, folder string
	// shown selects what is there once the page is of use.
	shown string
	// times in ms from the navigation to the end of the first frame in which go-app's
	// loader is gone and what is selected is shown: by kind of start.
	times map[string][]float64
	bytes int64 // of the bodies sent for a first load, the offline copy included
}

// Kinds of start.
const (
	firstLoad = "first load"
	slowLoad  = "first load over a slow link"
	warmLoad  = "reload of the kept page"
	coldLoad  = "kept page in a browser started anew"
)

var starts = []string{firstLoad, slowLoad, warmLoad, coldLoad}

// slowLink is a link of 10 Mbit/s with 40 ms there and back.
var slowLink = network.Conditions{Latency: 40, DownloadThroughput: 10e6 / 8, UploadThroughput: 2e6 / 8}

// noticeStart is a script that notes when the page can be used.
const noticeStart = `addEventListener("DOMContentLoaded", function look() {
	if (document.querySelector("#app-wasm-loader") || !document.querySelector(%s)) {
		requestAnimationFrame(look);
		return;
	}
	requestAnimationFrame(() => setTimeout(() => { window.usableAt = performance.now(); }));
})`

// BenchmarkStart measures how long our page takes to start, and an empty go-app page
// beside it, and prints both in a table.
func BenchmarkStart(b *testing.B) {
	const emptyFolder = "../../bin/empty/site"
	if _, err := os.Stat(emptyFolder); err != nil {
		b.Skip("no empty page to compare with; run make bench-browser")
	}
	ours := b.TempDir()
	if err := web.WriteSite(ours, nil); err != nil {
		b.Fatal(err)
	}
	pages := []*started{
		{name: "empty go-app page", folder: emptyFolder, shown: "#empty", times: map[string][]float64{}},
		{name: "Toewright", folder: ours, shown: outerBall, times: map[string][]float64{}},
	}
	for b.Loop() {
		for _, p := range pages {
			p.firstAndWarm(b)
			p.slow(b)
			p.cold(b)
		}
	}
	// A benchmark's log is cut off after some lines.
	fmt.Print("\n", startTable(pages), "\n")
	for _, kind := range starts {
		b.ReportMetric(median(pages[1].times[kind])/median(pages[0].times[kind]), strings.ReplaceAll(kind, " ", "_")+"-ratio")
	}
}

// firstAndWarm loads the page in a new profile, and again once it is kept offline.
func (p *started) firstAndWarm(b *testing.B) {
	host := &packedHost{folder: p.folder}
	p.visit(b, host, func(ctx context.Context) {
		p.note(b, ctx, firstLoad)
		await(b, ctx, `navigator.serviceWorker.ready.then((r) => r.active.state === "activated")`)
		p.bytes = host.sent.Load()
		do(b, ctx, chromedp.Reload())
		p.note(b, ctx, warmLoad)
	})
}

// slow loads the page in a new profile over a slow link.
func (p *started) slow(b *testing.B) {
	p.visit(b, &packedHost{folder: p.folder}, func(ctx context.Context) { p.note(b, ctx, slowLoad) },
		chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
			_, err := chromedp.Call(ctx, network.EmulateNetworkConditionsByRule,
				network.EmulateNetworkConditionsByRuleParams{MatchedNetworkConditions: []*network.Conditions{&slowLink}})
			return err
		}))
}

// cold loads the page, closes the browser once the page is kept, and loads it in the same
// profile again: the browser has nothing left that it compiled.
func (p *started) cold(b *testing.B) {
	server := Serve(b, Options{Handler: &packedHost{folder: p.folder}})
	defer server.Stop()
	profile := b.TempDir()
	for round := range 2 {
		own, err := launch(profile)
		if err != nil {
			b.Fatal(err)
		}
		late, cancel := context.WithTimeout(own.ctx, pageTimeout)
		p.open(b, late, server)
		if round == 0 {
			await(b, late, `navigator.serviceWorker.ready.then((r) => r.active.state === "activated")`)
		} else {
			p.note(b, late, coldLoad)
		}
		cancel()
		own.stop()
	}
}

// open opens the page in a tab, which notes when it was of use.
func (p *started) open(b *testing.B, ctx context.Context, server *Server, before ...chromedp.Action[chromedp.Void]) {
	b.Helper()
	do(b, ctx, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, cdppage.AddScriptToEvaluateOnNewDocument,
			cdppage.AddScriptToEvaluateOnNewDocumentParams{Source: fmt.Sprintf(noticeStart, quote(p.shown))})
		return err
	}))
	do(b, ctx, before...)
	do(b, ctx, chromedp.Navigate(server.Origin()+"/"))
}

// visit opens the page in a new profile, after what is to be done before, and does
// something with it.
func (p *started) visit(b *testing.B, host *packedHost, then func(context.Context), before ...chromedp.Action[chromedp.Void]) {
	b.Helper()
	server := Serve(b, Options{Handler: host})
	defer server.Stop()
	ctx, closeTab := chromedp.NewContext(shared.ctx, chromedp.WithNewBrowserContext())
	defer closeTab()
	do(b, ctx)
	late, cancel := context.WithTimeout(ctx, pageTimeout)
	defer cancel()
	p.open(b, late, server, before...)
	then(late)
}

// note waits for the page and notes when it was of use.
func (p *started) note(b *testing.B, ctx context.Context, kind string) {
	b.Helper()
	await(b, ctx, `window.usableAt !== undefined`)
	at, err := chromedp.Run(ctx, chromedp.Evaluate[float64](`window.usableAt`))
	if err != nil {
		b.Fatal(err)
	}
	p.times[kind] = append(p.times[kind], at)
}

func do(b *testing.B, ctx context.Context, steps ...chromedp.Action[chromedp.Void]) {
	b.Helper()
	if err := chromedp.Do(ctx, steps...); err != nil {
		b.Fatal(err)
	}
}

// await waits until an expression, or the promise it makes, is true.
func await(b *testing.B, ctx context.Context, expression string) {
	b.Helper()
	page := &Page{t: b, ctx: ctx, watch: &watch{}}
	page.WaitTrue(expression)
}

func median(times []float64) float64 {
	sorted := slices.Sorted(slices.Values(times))
	return sorted[len(sorted)/2]
}

// startTable returns the figures as a table in Markdown.
func startTable(pages []*started) string {
	var t strings.Builder
	row := func(name string, cell func(*started) string) {
		fmt.Fprintf(&t, "| %s |", name)
		for _, p := range pages {
			fmt.Fprintf(&t, " %s |", cell(p))
		}
		t.WriteByte('\n')
	}
	row("median of "+fmt.Sprint(len(pages[0].times[firstLoad])), func(p *started) string { return p.name })
	row("---", func(*started) string { return "---" })
	for _, form := range []string{"", ".gz", ".br"} {
		row("app.wasm"+form+", bytes", func(p *started) string { return size(filepath.Join(p.folder, "web", "app.wasm"+form)) })
	}
	row("sent for a first load, bytes", func(p *started) string { return fmt.Sprint(p.bytes) })
	for _, kind := range starts {
		if len(pages[0].times[kind]) == 0 {
			continue // not measured
		}
		row(kind+", ms to the first use", func(p *started) string { return fmt.Sprintf("%.0f", median(p.times[kind])) })
	}
	return t.String()
}

func size(file string) string {
	info, err := os.Stat(file)
	if err != nil {
		return "–"
	}
	return fmt.Sprint(info.Size())
}
