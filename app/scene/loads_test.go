package scene

import (
	"strings"
	"testing"
)

// TestLoadsAreDrawn: the case chosen is drawn on the wheels and on the rod, whose word says
// whether it is pulled or pushed; none is where none is chosen.
func TestLoadsAreDrawn(t *testing.T) {
	s, desk := NewStage(), templateDesk(t, "double-wishbone-rack", false)
	size := Size{Width: 900, Height: 700}
	word := func() string {
		out := s.Draw(desk, size)
		text := ""
		for _, slot := range nodes.views[frontView].loads {
			text += out.Text(slot).Content
		}
		if drawn := len(out.Path(nodes.views[sideView].load)) > 0; drawn != (text != "") {
			t.Errorf("forces drawn %t, words %q", drawn, text)
		}
		return text
	}
	if got := word(); got != "" {
		t.Errorf("no case is chosen: %q", got)
	}
	desk.ShowLoad(1)
	if got := word(); !strings.HasPrefix(got, "pushed 18") || !strings.HasSuffix(got, " N") {
		t.Errorf("kerb strike: %q", got)
	}
	c := &desk.Session.Document().Loads[0]
	c.Left.Force[0] = -c.Left.Force[0]
	if got := word(); !strings.HasPrefix(got, "pulled ") {
		t.Errorf("the other way: %q", got)
	}
}
