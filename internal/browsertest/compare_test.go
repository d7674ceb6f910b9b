package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// openCompare opens the step and waits until the workers have answered.
func openCompare(t *testing.T, o Options) *Page {
	page := openSheet(t, o)
	openPanel(page, "compare")
	page.WaitTrue(`!!document.querySelector("#cars tbody td") && !document.querySelector("#cars .waits")`)
	return page
}

// TestCompareShots makes pictures of the step at every width.
func TestCompareShots(t *testing.T) {
	for _, tt := range []struct {
		name string
		o    Options
	}{
		{"compare-1440", Options{Width: 1440, Height: 900}},
		{"compare-1440-dark", Options{Width: 1440, Height: 900, Dark: true}},
		{"compare-1024", Options{Width: 1024, Height: 768}},
		{"compare-390", Options{Width: 390, Height: 844, Touch: true}},
		{"compare-390-dark", Options{Width: 390, Height: 844, Touch: true, Dark: true}},
	} {
		page := openCompare(t, tt.o)
		page.Shot(tt.name)
		Eval[chromedp.Void](page, `void document.querySelector("#selected-car").scrollIntoView()`)
		page.Shot(tt.name + "-detail")
	}
}
