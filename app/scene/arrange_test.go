package scene

import (
	"fmt"
	"math"
	"testing"

	"toewright/app/model"
	"toewright/internal/plot"
	"toewright/solver"
)

// forms are the ways in which a sheet shows the two sides.
var forms = map[string]form{"half": {half: true}, "whole": {}, "whole, right": {side: solver.Right}}

// sheetSizes are those of the drawing on desktops, tablets and phones, upright and on
// their side.
var sheetSizes = []Size{{1400, 800}, {960, 680}, {832, 600}, {700, 480}, {568, 480}, {844, 290}, {560, 400}, {390, 390}, {390, 250}, {360, 240}, {320, 220}}

func TestArrange(t *testing.T) {
	for _, size := range sheetSizes {
		for face := model.FrontFace; face <= model.OrbitFace; face++ {
			for name, f := range forms {
				t.Run(fmt.Sprintf("%gx%g face %d %s", size.Width, size.Height, face, name), func(t *testing.T) {
					checkAreas(t, size, arrange(size, face, f), face, f)
				})
			}
		}
	}
}

// checkAreas holds what every arrangement has: parts on the paper and clear of one
// another, the view that is asked for, the charts of the form.
func checkAreas(t *testing.T, size Size, a areas, face model.Face, f form) {
	t.Helper()
	paper := plot.Box(0, 0, size.Width, size.Height)
	parts := map[string]plot.Rect{}
	for side, r := range a.chart {
		if r.Width() > 0 {
			parts[solver.Side(side).String()+" chart"] = r
		}
	}
	checkCharts(t, size, a, f)
	for v, r := range a.view {
		if r.Width() > 0 {
			parts[viewNames[v]] = r
		}
	}
	if a.view[viewOf[face]].Width() == 0 || a.large != viewOf[face] {
		t.Error("the view that is asked for is not the large one")
	}
	for name, r := range parts {
		if !paper.Contains(r.Min) || !paper.Contains(r.Max) || r.Height() <= 20 {
			t.Errorf("%s at %v does not lie on the paper with some height", name, r)
		}
		for other, s := range parts {
			if other != name && r.Overlaps(s) {
				t.Errorf("%s at %v overlaps %s at %v", name, r, other, s)
			}
		}
	}
	if shown := a.view[orbitView].Width() > 0; shown && face != model.OrbitFace {
		t.Error("the orbit view is shown though nobody asked for it")
	}
}

// checkCharts holds how many charts there are, and that two are alike.
func checkCharts(t *testing.T, size Size, a areas, f form) {
	t.Helper()
	l, r := a.chart[solver.Left], a.chart[solver.Right]
	two := pairWidth(size.Width) >= pairLeast
	switch {
	case f.half && (l.Width() == 0 || r.Width() > 0):
		t.Error("a half view has a chart for the left wheel, and no other")
	case !f.half && !two && (a.chart[f.side].Width() == 0 || a.chart[solver.Right-f.side].Width() > 0):
		t.Errorf("a narrow sheet has a chart for the %s wheel, and no other", f.side)
	case !f.half && two && (l.Width() < 200 || l.Min.Y != r.Min.Y || l.Max.Y != r.Max.Y || math.Abs(l.Width()-r.Width()) > 1e-9):
		t.Errorf("charts at %v and %v are not alike", l, r)
	}
}

// TestLargeChart checks the sizes of the charts on the window of a desktop.
func TestLargeChart(t *testing.T) {
	size := Size{832, 612}
	if c := arrange(size, model.FrontFace, form{half: true}).chart[solver.Left]; math.Abs(c.Width()-352) > 8 || math.Abs(c.Height()-352) > 8 {
		t.Errorf("the chart of a half view is %.0f by %.0f px, want about 352", c.Width(), c.Height())
	}
	size.Width = 1000
	if c := arrange(size, model.FrontFace, form{}).chart[solver.Right]; math.Abs(c.Width()-pairChart) > 8 {
		t.Errorf("one of two charts is %.0f px wide, want about %d", c.Width(), pairChart)
	}
}

// TestRowOfSmallViews checks that a tall sheet shows the other views in a lower row, and a
// low or narrow one none.
func TestRowOfSmallViews(t *testing.T) {
	for _, size := range sheetSizes {
		want := 1
		if size.Width >= wideFrom && size.Height >= tallFrom {
			want += smallCount
		}
		for face := model.FrontFace; face <= model.OrbitFace; face++ {
			got := 0
			for _, r := range arrange(size, face, form{half: true}).view {
				if r.Width() > 0 {
					got++
				}
			}
			if got != want {
				t.Errorf("%gx%g, face %d: %d views, want %d", size.Width, size.Height, face, got, want)
			}
		}
	}
}
