package scene

import (
	"fmt"
	"math"
	"testing"

	"toewright/app/plot"
)

func TestArrange(t *testing.T) {
	for _, size := range []Size{{1400, 800}, {960, 680}, {700, 480}, {560, 400}, {390, 390}, {320, 300}} {
		for _, orbit := range []bool{false, true} {
			t.Run(fmt.Sprintf("%gx%g orbit %t", size.Width, size.Height, orbit), func(t *testing.T) {
				checkAreas(t, size, arrange(size, orbit), orbit)
			})
		}
	}
}

// checkAreas holds what every arrangement has: parts on the paper and clear of one
// another, two charts of one height.
func checkAreas(t *testing.T, size Size, a areas, orbit bool) {
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
	if shown := a.view[orbitView].Width() > 0; shown && !orbit {
		t.Error("the orbit view is shown though nobody asked for it")
	}
}
