package browsertest

import (
	"fmt"
	"strings"
	"testing"

	"toewright/internal/web"
)

// The line of the first script that has the start wait for the program's digest, and what it would
// be without one: the bytes are counted then for the progress of a first load alone.
const (
	checked   = `await check(copy.body);`
	unchecked = `check(copy.body).catch(() => {});`
)

// BenchmarkCheck measures what a start costs more because the program's digest is taken before
// it runs: beside the page as it is, the same without that.
func BenchmarkCheck(b *testing.B) {
	files := Built(b)
	boot := string(files["boot.js"].Data)
	if strings.Count(boot, checked) != 1 {
		b.Fatalf("boot.js has no line %q", checked)
	}
	Put(files, "boot.js", strings.Replace(boot, checked, unchecked, 1))
	pages := []*started{
		{name: "without the check", folder: b.TempDir(), shown: outerBall, times: map[string][]float64{}},
		{name: "Toewright", folder: b.TempDir(), shown: outerBall, times: map[string][]float64{}},
	}
	if err := web.WriteSite(pages[0].folder, files); err != nil {
		b.Fatal(err)
	}
	if err := web.WriteSite(pages[1].folder, nil); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		for _, p := range pages {
			p.firstAndWarm(b)
			p.cold(b)
		}
	}
	fmt.Print("\n", startTable(pages), "\n") // A benchmark's log is cut off after some lines.
}
