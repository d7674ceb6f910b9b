package browsertest

import (
	"context"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// TestDrawingSheetPrints prints the page as it stands on both papers: the drawing, its
// title block and the table of cars, on one page.
func TestDrawingSheetPrints(t *testing.T) {
	for _, o := range []Options{{Dark: true}, {Width: 1024, Height: 768}, {Width: 390, Height: 844, Touch: true}} {
		page := openSheet(t, o)
		for _, paper := range []struct {
			name          string
			width, height float64 // in
		}{{"A4", 8.27, 11.69}, {"Letter", 8.5, 11}} {
			pdf := toPDF(page, paper.width, paper.height)
			if n := pages(pdf); n != 1 {
				t.Errorf("%d px wide, %s: %d pages, want 1", o.Width, paper.name, n)
			}
			keep(t, "sheet on "+paper.name, pdf)
		}
	}
}

// TestWhatIsPrinted checks what stands on paper: the drawing and the table of cars, in
// Compare its own table beside the title block with its caution, or where the bench sheet is
// open that alone; in no case what can be pressed.
func TestWhatIsPrinted(t *testing.T) {
	page := openSheet(t, Options{Dark: true})
	page.Do(chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
		return err
	}))
	for _, tt := range []struct {
		tab   string
		shown map[string]bool
	}{
		{"search", map[string]bool{"#picture": true, ".printed": true, ".title-block": true, ".bench-sheet": false, ".strip": false, "#undo": false, "#play": false}},
		{"compare", map[string]bool{"#picture": false, ".compare-table": true, ".printed": false, ".title-block": true, ".strip": false, "#undo": false}},
		{"sheet", map[string]bool{"#picture": false, ".printed": false, ".bench-sheet": true, "#print": false, ".steps": false}},
	} {
		openPanel(page, tt.tab)
		for selector, want := range tt.shown {
			if got := Evalf[bool](page, `(document.querySelector(%s)?.getClientRects().length ?? 0) > 0`, quote(selector)); got != want {
				t.Errorf("%s: %s is printed: %t, want %t", tt.tab, selector, got, want)
			}
		}
	}
	if rows := Eval[int](page, `document.querySelectorAll(".printed tbody tr").length`); rows != 5 {
		t.Errorf("the table has %d rows, want one for each car of the demo", rows)
	}
}
