package scene

import (
	"fmt"
	"math"
	"testing"

	"toewright/app/model"
	"toewright/internal/plot"
)

func TestArrange(t *testing.T) {
	for _, size := range []Size{{1400, 800}, {960, 680}, {700, 480}, {844, 290}, {560, 400}, {390, 390}, {320, 300}, {390, 220}} {
		for face := model.FrontFace; face <= model.OrbitFace; face++ {
			t.Run(fmt.Sprintf("%gx%g face %d", size.Width, size.Height, face), func(t *testing.T) {
				checkAreas(t, size, arrange(size, face), face)
			})
		}
	}
}

// checkAreas holds what every arrangement has: parts on the paper and clear of one
// another, two charts of one height.
func checkAreas(t *testing.T, size Size, a areas, face model.Face) {
	t.Helper()
	paper := plot.Box(0, 0, size.Width, size.Height)
	parts := map[string]plot.Rect{"left chart": a.chart[0], "right chart": a.chart[1]}
	for v, r := range a.view {
		if r.Width() > 0 {
			parts[viewNames[v]] = r
		}
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
	if l, r := a.chart[0], a.chart[1]; l.Min.Y != r.Min.Y || l.Max.Y != r.Max.Y || math.Abs(l.Width()-r.Width()) > 1e-9 {
		t.Errorf("charts at %v and %v are not alike", l, r)
	}
	if shown := a.view[orbitView].Width() > 0; shown && face != model.OrbitFace {
		t.Error("the orbit view is shown though nobody asked for it")
	}
}

// TestLowSheetShowsItsFace checks that a wide sheet without room for a second row shows
// the view that is asked for between the charts, and no other.
func TestLowSheetShowsItsFace(t *testing.T) {
	for face := model.FrontFace; face <= model.OrbitFace; face++ {
		a := arrange(Size{844, 290}, face)
		for v := range viewCount {
			if got, want := a.view[v].Width() > 0, v == viewOf[face]; got != want {
				t.Errorf("face %d: %s view is shown = %t, want %t", face, viewNames[v], got, want)
			}
		}
	}
}

// TestNarrowSheetShowsItsFace checks that a narrow sheet shows the view that is asked for
// and no other, and none where it is low.
func TestNarrowSheetShowsItsFace(t *testing.T) {
	for face := model.FrontFace; face <= model.OrbitFace; face++ {
		high, low := arrange(Size{390, 390}, face), arrange(Size{390, 220}, face)
		for v := range viewCount {
			if got, want := high.view[v].Width() > 0, v == viewOf[face]; got != want {
				t.Errorf("face %d: %s view is shown = %t, want %t", face, viewNames[v], got, want)
			}
			if low.view[v].Width() > 0 {
				t.Errorf("face %d: %s view is shown on a low sheet", face, viewNames[v])
			}
		}
	}
}
