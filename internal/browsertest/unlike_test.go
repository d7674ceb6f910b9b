package browsertest

import (
	"fmt"
	"testing"

	"toewright/app/store"
	"toewright/internal/study"
)

// unlikeLink carries a study with a candidate whose sides differ, the best of its cars and
// so the one that is selected.
func unlikeLink(t *testing.T) string {
	t.Helper()
	d := study.Template{Key: "double-wishbone-centre-link"}.Document()
	d.Candidates = []study.Candidate{{Name: "Fitted, unlike", Changes: study.Changes{"tieRodOuterHeight@left": -0.6875, "tieRodOuterHeight@right": -0.5}}}
	link, err := store.Link(d)
	if err != nil {
		t.Fatal(err)
	}
	return "#" + link
}

// TestUnlikeSides: a car whose sides differ has a chart for each and its causes side by
// side; on a phone one chart, and something to drag all the same. A ball is dragged at its
// own side.
func TestUnlikeSides(t *testing.T) {
	for _, o := range []Options{{}, {Width: 1024, Height: 768, Dark: true}, {Width: 390, Height: 844, Touch: true}, {Width: 360, Height: 640, Touch: true, Dark: true}} {
		t.Run(fmt.Sprint(o.Width), func(t *testing.T) {
			o.Path = unlikeLink(t)
			page := openSheet(t, o)
			page.WaitTrue(explained)
			page.Shot(fmt.Sprintf("unlike %d", o.Width))
			const charts = `["left", "right"].filter((side) => document.querySelector(".chart." + side + " .frame").getAttribute("d")).length`
			want := 2
			if o.Width > 0 {
				want = 1 // of which the width is more than either of two would have
			}
			if got := Eval[int](page, charts); got != want {
				t.Errorf("%d charts, want %d", got, want)
			}
			height := value(t, page, outerBall)
			if o.Touch {
				touchDrag(page, middle(page, outerBall), 0, -12)
			} else {
				drag(page, middle(page, outerBall), 0, -12)
			}
			if got := value(t, page, outerBall); !(got > height) {
				t.Errorf("height after a drag upward = %g, want more than %g", got, height)
			}
			page.WaitTrue(`document.querySelector("#problem") === null`)
			page.WaitTrue(explained)
			page.Shot(fmt.Sprintf("unlike dragged %d", o.Width))
		})
	}
}
