package browsertest

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// runOf returns a table of what a gauge reads on the template's car, both wheels, with a
// toe that is off by a share of the travel, in degrees at its end.
func runOf(t *testing.T, off float64) string {
	t.Helper()
	d := study.Template{Key: "double-wishbone-rack"}.Document()
	r, err := engine.Sweep(context.Background(), d, engine.SweepOptions{Candidate: study.BaseName})
	if err != nil {
		t.Fatal(err)
	}
	lines := []string{"travel,left,right,gauge,base"}
	for i, p := range r.Sweeps[0].Positions {
		mm := func(toe float64) float64 {
			return 400 * math.Tan((toe+off*p.Travel/d.Window().Bump)*math.Pi/180)
		}
		lines = append(lines, fmt.Sprintf("%g,%.2f,%.2f,indicators,400", p.Travel, mm(p.Toe), mm(r.Sweeps[1].Positions[i].Toe)))
	}
	return strings.Join(lines, "\n")
}

// TestSeriesOfCarsMeasured keeps two cars by their readings, judges them on a worker with the
// server gone, opens one again, undoes that, and has the record written.
func TestSeriesOfCarsMeasured(t *testing.T) {
	for _, o := range []Options{{Width: 1440, Height: 900}, {Width: 390, Height: 844, Touch: true, Dark: true}} {
		page := Open(t, o)
		startClean(page)
		for i, off := range []float64{0.4, 0.5} {
			Eval[chromedp.Void](page, `(() => {
				const field = document.querySelector("#readings-text");
				field.value = `+quote(runOf(t, off))+`;
				field.dispatchEvent(new Event("input", {bubbles: true}));
			})()`)
			click(page, "#readings-take")
			page.WaitTrue(`!!document.querySelector("#series-keep")`)
			page.WaitTrue(fmt.Sprintf(`document.querySelector("#series-car").value === "no. %d"`, i+1))
			if i == 1 {
				typeInto(page, "#series-car", "blue pickup")
			}
			click(page, "#series-keep")
			page.WaitTrue(`!!document.querySelector("#no-readings")`)
		}
		page.WaitOfflineReady()
		page.Stop()
		openPanel(page, "series")
		click(page, "#judge-series")
		page.WaitTrue(`!!document.querySelector("#series-words")`)
		page.WaitTrue(`(() => {
			const rows = [...document.querySelectorAll("#series-cars tbody tr")].map((r) => r.textContent);
			return rows[0].includes("no. 1") && rows[1].includes("blue pickup") && rows.every((r) => r.includes("✗ fail"));
		})()`)
		page.WaitTrue(`document.querySelectorAll("#series-common tbody tr").length > 0`)
		Eval[chromedp.Void](page, `void document.querySelector("#measured-cars").scrollIntoView()`)
		page.Shot(fmt.Sprintf("series-%d", o.Width))
		Eval[chromedp.Void](page, catchFiles)
		click(page, "#save-series")
		page.WaitTrue(`!!` + caught("text/html"))
		record := Eval[string](page, caught("text/html")+`.text()`)
		for _, want := range []string{"Series record", "no. 1", "blue pickup", "fail"} {
			if !strings.Contains(record, want) {
				t.Errorf("the record has no %q", want)
			}
		}
		open := `[aria-label="Back to the run sheet: no. 1"]`
		click(page, open)
		page.WaitTrue(`document.querySelectorAll("#series-cars tbody tr").length === 1`)
		click(page, "#message-undo")
		page.WaitTrue(`document.querySelector("#series-cars tbody tr").textContent.includes("no. 1")`)
		openPanel(page, "readings")
		page.WaitTrue(`!!document.querySelector("#no-readings")`)
		openPanel(page, "series")
		click(page, open)
		page.WaitTrue(`document.querySelectorAll("#series-cars tbody tr").length === 1`)
		openPanel(page, "readings")
		page.WaitTrue(`!!document.querySelector("#run-0")`)
		page.Shot(fmt.Sprintf("series-run-%d", o.Width))
		click(page, "#series-keep")
		openPanel(page, "series")
		page.WaitTrue(`document.querySelector("#series-cars tbody").textContent.includes("no. 2")`)
	}
}
