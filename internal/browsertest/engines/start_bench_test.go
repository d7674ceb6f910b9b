package engines

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"toewright/internal/browsertest"
	"toewright/internal/web"
)

// noteStart goes behind the page's own first script. It notes, in ms from the navigation, the end
// of the first frame in which the ball can be dragged, and when the solver's workers answered.
const noteStart = `
addEventListener("DOMContentLoaded", function look() {
	if (!window.usableAt && !document.querySelector("#app-wasm-loader") && document.querySelector('` + outerBall + `')) {
		window.usableAt = -1;
		requestAnimationFrame(() => setTimeout(() => { window.usableAt = performance.now(); }));
	}
	if (document.querySelector("#solver")?.textContent.trim() === "ready") {
		window.solverAt = performance.now();
	} else {
		requestAnimationFrame(look);
	}
});
`

// start is what is measured of a start: which one, until when.
type start struct{ load, until, noted string }

var starts = []start{
	{"first load", "the ball can be dragged", "usableAt"}, {"first load", "the solver answers", "solverAt"},
	{"kept page", "the ball can be dragged", "usableAt"}, {"kept page", "the solver answers", "solverAt"},
}

// times are those of each engine, by its name, in ms.
type times map[start]map[string][]float64

// BenchmarkStart measures how long the page takes to start in each engine, one after the other:
// in a browser and a profile that are new, and once more when it is kept. It prints a table of the
// medians, with what they are to Chromium's.
func BenchmarkStart(b *testing.B) {
	if !web.Built() {
		b.Skip("the page has not been built; run make bench-engines")
	}
	for _, e := range All {
		if packet := e.Missing(); packet != "" {
			b.Skipf("there is no %s; on Debian: apt-get install %s", e.Name, packet)
		}
	}
	files := browsertest.Built(b)
	browsertest.Put(files, "boot.js", string(files["boot.js"].Data)+noteStart)
	server := browsertest.Serve(b, browsertest.Options{Web: web.Config{Assets: files}})
	all := times{}
	for b.Loop() {
		for _, e := range All {
			s, err := e.Start(Options{})
			if err != nil {
				b.Fatal(err)
			}
			p := &page{Server: server, t: b, s: s, name: e.Name}
			p.must(s.Size(1440, 900))
			all.take(p, "first load")
			p.wait(`navigator.serviceWorker.controller !== null`)
			all.take(p, "kept page")
			s.Close()
		}
	}
	fmt.Print("\n", all.table(), "\n") // A benchmark's log is cut off after some lines.
}

// take opens the page and takes its times.
func (t times) take(p *page, load string) {
	p.must(p.s.Open(p.Origin() + "/"))
	p.wait(`window.solverAt > 0 && window.usableAt > 0`)
	for _, s := range starts {
		if s.load != load {
			continue
		}
		if t[s] == nil {
			t[s] = map[string][]float64{}
		}
		t[s][p.name] = append(t[s][p.name], get[float64](p, s.noted))
	}
}

// table returns the medians as a table in Markdown.
func (t times) table() string {
	var text strings.Builder
	fmt.Fprintf(&text, "| median of %d, ms | until |", len(t[starts[0]]["Chromium"]))
	for _, e := range All {
		fmt.Fprintf(&text, " %s | × Chromium |", e.Name)
	}
	fmt.Fprintf(&text, "\n|%s\n", strings.Repeat(" --- |", 2+2*len(All)))
	for _, s := range starts {
		fmt.Fprintf(&text, "| %s | %s |", s.load, s.until)
		for _, e := range All {
			m := median(t[s][e.Name])
			fmt.Fprintf(&text, " %.0f | %.2f |", m, m/median(t[s]["Chromium"]))
		}
		text.WriteByte('\n')
	}
	return text.String()
}

func median(times []float64) float64 {
	return slices.Sorted(slices.Values(times))[len(times)/2]
}
