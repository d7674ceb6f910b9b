package browsertest

import (
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// What the demo shows: its base car and, selected, a candidate whose outer balls stand
// 12 mm lower.
const (
	baseCurve     = `.chart.left path.line.s0`
	selectedCurve = `.chart.left path.line.s2`
	outerBall     = `.ball-handle[aria-label="tie rod, outer ball"]`
	leftMarker    = `.handle[aria-label="left wheel travel"]`
)

// openSheet opens the page and waits until the sheet is drawn and lives: what the server
// sent ahead of the program is replaced by then.
func openSheet(t testing.TB, o Options) *Page {
	t.Helper()
	page := Open(t, o)
	page.WaitText("#solver", "ready")
	page.WaitTrue(`!!document.querySelector('` + outerBall + `')`)
	return page
}

// value returns the number of a slider.
func value(t testing.TB, p *Page, slider string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(attribute(t, p, slider, "aria-valuenow"), 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestSheetShowsBothWheels(t *testing.T) {
	for _, o := range []Options{{}, {Width: 1024, Height: 768, Dark: true}, {Width: 390, Height: 844, Touch: true}} {
		page := Open(t, o)
		page.WaitTrue(`!!document.querySelector('` + leftMarker + `')`)
		for _, path := range []string{baseCurve, selectedCurve, `.view.front .tyre`, `.view.front .rod`} {
			if d := attribute(t, page, path, "d"); len(d) < 40 {
				t.Errorf("%d px wide: path of %s is %q, want a curve or a part", o.Width, path, d)
			}
		}
		if wide := Eval[int](page, `document.documentElement.scrollWidth - innerWidth`); wide > 0 {
			t.Errorf("%d px wide: the page scrolls sideways by %d px", o.Width, wide)
		}
		page.Shot("sheet " + strconv.FormatInt(o.Width, 10))
	}
}

func TestDragOfTheOuterBall(t *testing.T) {
	page := openSheet(t, Options{})
	before, base := attribute(t, page, selectedCurve, "d"), attribute(t, page, baseCurve, "d")
	height := value(t, page, outerBall)
	drag(page, middle(page, outerBall), 0, -8)
	if got := value(t, page, outerBall); !(got > height) {
		t.Errorf("height after a drag upward = %g, want more than %g", got, height)
	}
	if attribute(t, page, selectedCurve, "d") == before {
		t.Error("the candidate's curve has not changed")
	}
	if attribute(t, page, baseCurve, "d") != base {
		t.Error("the base car's curve has changed")
	}
	page.Shot("dragged")
}

func TestKeysOnTheOuterBall(t *testing.T) {
	page := openSheet(t, Options{})
	id := attribute(t, page, outerBall, "id")
	height := value(t, page, outerBall)
	page.Do(chromedp.Focus(chromedp.CSS("#" + id)))
	for _, tt := range []struct {
		keys string
		opts []chromedp.KeyOption
		want float64
	}{
		{keys: kb.ArrowUp, want: height + 1},
		{keys: kb.ArrowDown, want: height},
		{keys: kb.ArrowUp, opts: []chromedp.KeyOption{chromedp.KeyModifiers(chromedp.ModifierShift)}, want: height + 10},
	} {
		page.Do(chromedp.KeyEvent(tt.keys, tt.opts...))
		waitFrame(page)
		if got := value(t, page, outerBall); got != tt.want {
			t.Errorf("height = %g, want %g", got, tt.want)
		}
	}
	if spoken := attribute(t, page, outerBall, "aria-valuetext"); !strings.Contains(spoken, "height") {
		t.Errorf("value as people hear it = %q, want it to say what it is", spoken)
	}
}

func TestMarkerAndWheelMoveTogether(t *testing.T) {
	page := openSheet(t, Options{})
	wheels := attribute(t, page, `.view.front .tyre`, "d")
	marker := middle(page, leftMarker)
	drag(page, marker, 0, -60)
	if got := value(t, page, leftMarker); !(got > 5) {
		t.Errorf("travel after a drag up the chart = %g, want bump", got)
	}
	if attribute(t, page, `.view.front .tyre`, "d") == wheels {
		t.Error("the wheels have not moved")
	}
	drag(page, middle(page, `.handle[aria-label="left wheel"]`), 0, 20)
	if got := value(t, page, leftMarker); !(got < 5) {
		t.Errorf("travel after the wheel was pulled down = %g, want droop", got)
	}
	click(page, "#level")
	page.WaitTrue(`document.querySelector('` + leftMarker + `').getAttribute("aria-valuenow") === "0.00"`)
}

func TestSheetWithoutItsServer(t *testing.T) {
	page := openSheet(t, Options{})
	page.WaitOfflineReady()
	page.Offline()
	page.Reload()
	page.WaitTrue(`!!document.querySelector('` + outerBall + `')`)
	height := value(t, page, outerBall)
	drag(page, middle(page, outerBall), 0, 8)
	if got := value(t, page, outerBall); !(got < height) {
		t.Errorf("height after a drag downward = %g, want less than %g", got, height)
	}
}
