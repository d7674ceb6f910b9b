package browsertest

import (
	"bytes"
	"context"
	"encoding/base64"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"toewright/internal/report"
	"toewright/internal/study"
)

const (
	// mostPages is the most that a bench sheet prints on.
	mostPages = 2
	// fewCars are those of a series: their number takes no room.
	fewCars = 500
	// fullPages is the same where two arms that differ and load cases come together.
	fullPages = 3
)

// TestBenchSheetPrints prints the sheet of every invented car on both papers.
func TestBenchSheetPrints(t *testing.T) {
	tab := blankTab(t)
	for _, template := range study.Templates() {
		for _, paper := range []report.Paper{report.A4, report.Letter} {
			name := template.Key + " " + string(paper)
			pdf := printed(tab, sheetOf(t, template.Document(), paper))
			if n := pages(pdf); n < 1 || n > mostPages {
				t.Errorf("%s prints on %d pages, want 1 or %d", name, n, mostPages)
			}
			keep(t, name, pdf)
		}
	}
}

// TestFullBenchSheetPrints prints the most that a sheet has to hold: two arms that
// differ, toe as a length, load cases, and all that a study may state.
func TestFullBenchSheetPrints(t *testing.T) {
	d := mustTemplate(t, "double-wishbone-rack")
	right := d.Suspension.Left.Mirrored()
	right.Points["tieRodOuter"] = study.Vec3{-132, -686, 243}
	d.Suspension.Right = &right
	d.Candidates = []study.Candidate{{
		Name: "Own arms", Note: "Forged arms, one for each side.",
		Changes: study.Changes{"tieRodOuterHeight@left": -11.9, "tieRodOuterHeight@right": -14.5, "steeringArmLength": -6, "steeringArmOffset": 4},
	}}
	d.Search.Target = [][2]float64{{-60, 0.1}, {0, 0}, {60, -0.2}}
	d.Display = &study.Display{Toe: "indicators", Base: 300}
	tab := blankTab(t)
	for _, paper := range []report.Paper{report.A4, report.Letter} {
		pdf := printed(tab, sheetOf(t, d, paper))
		if n := pages(pdf); n != fullPages {
			t.Errorf("%s: %d pages, want %d", paper, n, fullPages)
		}
		keep(t, "full "+string(paper), pdf)
	}
}

func mustTemplate(t *testing.T, key string) *study.Document {
	t.Helper()
	return study.Template{Key: key}.Document()
}

func sheetOf(t *testing.T, d *study.Document, paper report.Paper) []byte {
	t.Helper()
	return writtenAs(t, d, report.Options{Paper: paper, Cars: new(fewCars)})
}

// writtenAs is what is written of a study's candidate, as a page.
func writtenAs(t *testing.T, d *study.Document, o report.Options) []byte {
	t.Helper()
	sheet, err := report.Gather(t.Context(), d, o)
	if err != nil {
		t.Fatal(err)
	}
	var page bytes.Buffer
	if err := report.Write(&page, sheet); err != nil {
		t.Fatal(err)
	}
	return page.Bytes()
}

// blankTab opens a tab with nothing in it. The test fails if what is shown there
// complains or asks for anything.
func blankTab(t *testing.T) *Page {
	t.Helper()
	tab, closeTab := chromedp.NewContext(shared.ctx, chromedp.WithNewBrowserContext())
	t.Cleanup(closeTab)
	if err := chromedp.Do(tab); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(tab, pageTimeout)
	t.Cleanup(cancel)
	p := &Page{t: t, ctx: ctx, watch: newWatch(t, ctx, "data:")}
	t.Cleanup(p.check)
	return p
}

// toPDF returns the page as it stands as the browser prints it, on paper of a size in
// inches.
func toPDF(p *Page, width, height float64) (pdf []byte) {
	p.t.Helper()
	p.Do(chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		result, err := chromedp.Call(ctx, page.PrintToPDF, page.PrintToPDFParams{PaperWidth: width, PaperHeight: height})
		pdf = result.Data
		return err
	}))
	return pdf
}

// printed returns a page as the browser prints it, by the page's own paper.
func printed(p *Page, html []byte) (pdf []byte) {
	p.t.Helper()
	byPaper := true
	p.Do(
		chromedp.Navigate("data:text/html;charset=utf-8;base64,"+base64.StdEncoding.EncodeToString(html)),
		chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
			result, err := chromedp.Call(ctx, page.PrintToPDF, page.PrintToPDFParams{PreferCSSPageSize: &byPaper})
			pdf = result.Data
			return err
		}),
	)
	return pdf
}

var pagePattern = regexp.MustCompile(`/Type\s*/Page\b[^s]`)

// pages counts the pages of a PDF as Chromium writes it, its page objects in plain
// text.
func pages(pdf []byte) int { return len(pagePattern.FindAll(pdf, -1)) }

// keep writes a printed page to the folder that TOEWRIGHT_SHOTS names, if it does.
func keep(t *testing.T, name string, pdf []byte) {
	t.Helper()
	folder := os.Getenv("TOEWRIGHT_SHOTS")
	if folder == "" {
		return
	}
	if err := os.WriteFile(filepath.Join(folder, strings.ReplaceAll(name, " ", "-")+".pdf"), pdf, 0o644); err != nil {
		t.Fatal(err)
	}
}
